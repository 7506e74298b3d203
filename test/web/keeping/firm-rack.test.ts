import { describe, expect, it } from 'vitest';
import { emptyJob } from '../../../core/job/defaults';
import type { Job, Revision, StockSheet } from '../../../core/job/schema';
import { bookRevision } from '../../../web/keeping/book-revision';
import {
  asRackPiece,
  nextMark,
  noHolders,
  stateInWords,
  stateOf,
  stockLike,
  type FirmPiece,
  type Holders,
} from '../../../web/keeping/firm-piece';
import { bringIn, readRack, writeRack } from '../../../web/keeping/rack-file';

const stock: StockSheet = {
  id: 'S1',
  name: 'Steel',
  width: 500,
  height: 500,
  thickness: 0.5,
  price: 6.4,
  hasFace: false,
  coating: 'galvanised',
  spares: 0,
};
const steel = { thickness: 0.5, coating: 'Galvanised ', hasFace: false, stockName: 'Steel' };
const piece = (id: string, more: Partial<FirmPiece> = {}): FirmPiece => ({
  key: `key-${id}`,
  id,
  width: 300,
  height: 200,
  ...steel,
  ...more,
});

function jobWith(revisions: Revision[], rack: Job['rack'] = []): Job {
  return { ...emptyJob('Studio'), stock: [stock], rack, revisions };
}
const revision = (id: string, out: string[], left: string[]): Revision => ({
  id,
  date: '2026-05-04',
  note: '',
  rack: { out, in: left.map((mark) => ({ id: mark, stock: 'S1', width: 100, height: 90, from: 'N1' })) },
});
const heldBy = (entries: Record<string, string[]>): Holders =>
  new Map(
    Object.entries(entries).map(([id, jobs]) => [`key-${id}`, jobs.map((job) => ({ jobKey: job, job }))]),
  );

let keys = 0;
const book = (pieces: FirmPiece[], job: Job, more: { isSteelCut?: boolean; holders?: Holders } = {}) =>
  bookRevision(pieces, more.holders ?? noHolders, {
    jobKey: 'ours',
    job,
    isSteelCut: more.isSteelCut ?? false,
    freshKey: () => `fresh-${++keys}`,
  });
const booking = (jobKey: string, id: string) => ({ jobKey, job: jobKey, revision: id, date: '2026-05-04' });

describe('a piece of the firm’s rack', () => {
  it('is free, reserved, held twice or used up, in words', () => {
    const words = (one: FirmPiece, jobs: string[]) =>
      stateInWords(stateOf(one, heldBy(jobs.length > 0 ? { R1: jobs } : {})));
    expect(words(piece('R1'), [])).toBe('free');
    expect(words(piece('R1'), ['Shop'])).toBe('reserved by “Shop”');
    expect(words(piece('R1'), ['Shop', 'Bar'])).toBe('held by “Shop” and “Bar”: give it back in one of them');
    const gone = piece('R1', { usedUp: booking('Shop', 'B') });
    expect(words(gone, ['Shop'])).toBe('used up in “Shop”, revision B');
  });

  it('fits stock of its thickness, coating and face side, and costs something only in its own currency', () => {
    const job = { ...jobWith([]), stock: [{ ...stock, id: 'S9', hasFace: true }, stock] };
    expect(stockLike(piece('R1'), job).map(({ id }) => id)).toEqual(['S1']);
    expect(stockLike(piece('R1', { thickness: 0.8 }), job)).toEqual([]);
    const dear = piece('R1', { value: 2, currency: 'EUR' });
    expect(asRackPiece(dear, stock, job)).toEqual({
      id: 'R1',
      stock: 'S1',
      width: 300,
      height: 200,
      value: 2,
      firm: 'key-R1',
    });
    expect(asRackPiece(dear, stock, { ...job, currency: 'CHF' })).not.toHaveProperty('value');
  });

  it('gets the mark after the highest', () => {
    expect(nextMark([])).toBe('R1');
    expect(nextMark(['R9', 'R12', 'corner'])).toBe('R13');
  });
});

describe('bookRevision', () => {
  const rack = [{ id: 'R1', stock: 'S1', width: 300, height: 200, firm: 'key-R1' }];

  it('books out what the plan uses and puts what it leaves on the rack', () => {
    const change = book([piece('R1'), piece('R2')], jobWith([revision('A', ['R1'], ['R3'])], rack));
    expect(change).toMatchObject({
      put: [
        { id: 'R1', usedUp: { jobKey: 'ours', job: 'Studio', revision: 'A' } },
        { id: 'R3', width: 100, height: 90, thickness: 0.5, coating: 'galvanised', from: { revision: 'A' } },
      ],
      remove: [],
      promised: [],
    });
  });

  it('refuses, and says whose it is, where another job holds the piece or has used it up', () => {
    const job = jobWith([revision('A', ['R1'], [])], rack);
    expect(book([piece('R1')], job, { holders: heldBy({ R1: ['ours', 'Shop'] }) })).toEqual({
      fault: 'Rack piece R1 is held by “Shop” too; give it back in one of them first.',
    });
    const gone = piece('R1', { usedUp: booking('Shop', 'A') });
    expect(book([gone], job)).toMatchObject({
      fault: expect.stringContaining('used up in “Shop”') as string,
    });
  });

  it('takes the place of the revision before while no steel was cut', () => {
    const before = [
      piece('R1', { usedUp: booking('ours', 'A') }),
      piece('R3', { from: booking('ours', 'A') }),
      piece('R4', { from: booking('ours', 'A') }),
      piece('R5', { from: booking('ours', 'A') }),
      piece('R6', { from: booking('Shop', 'A'), usedUp: booking('Shop', 'A') }),
      piece('R7', { from: booking('Shop', 'A') }),
    ];
    const job = jobWith([revision('A', ['R1'], ['R3', 'R4', 'R5']), revision('B', [], ['R3', 'R8'])], rack);
    const change = book(before, job, { holders: heldBy({ R5: ['Shop'] }) });
    if ('fault' in change) throw new Error(change.fault);
    expect(change.put.map(({ id, usedUp }) => [id, usedUp])).toEqual([
      ['R1', undefined],
      ['R8', undefined],
    ]);
    expect(change.remove).toEqual(['key-R4']);
    expect(change.promised).toEqual(['R5']);
  });

  it('leaves every earlier booking where steel was cut', () => {
    const before = [
      piece('R1', { usedUp: booking('ours', 'A') }),
      piece('R3', { from: booking('ours', 'A') }),
    ];
    const job = jobWith([revision('A', ['R1'], ['R3']), revision('B', [], ['R8'])], rack);
    const change = book(before, job, { isSteelCut: true });
    expect(change).toMatchObject({ put: [{ id: 'R8' }], remove: [] });
  });

  it('knows the bookings of a file that was opened again as another entry of the list', () => {
    const before = [piece('R1', { usedUp: booking('earlier entry', 'A') })];
    const job = jobWith([revision('A', ['R1'], []), revision('B', ['R1'], [])], rack);
    expect(book(before, job)).toMatchObject({ put: [], remove: [] });
  });
});

describe('the rack as a file', () => {
  it('is read again as it was written', () => {
    const pieces = [
      piece('R1', { usedUp: booking('Shop', 'B') }),
      piece('R2', { value: 2, currency: 'EUR' }),
    ];
    expect(readRack(writeRack(pieces))).toEqual({ pieces });
  });

  it.each([
    ['no JSON', 'R1 500 × 240', /^This file is no JSON; .*\.$/],
    ['a job file', '{"format": "lodeplan-job", "version": 1}', /^This is no rack file: /],
    [
      'a width that is none',
      writeRack([{ ...piece('R1'), width: -3 }]),
      /^In this rack file pieces\.0\.width cannot be read: /,
    ],
  ])('is refused with one sentence where it is %s', (_, text, says) => {
    const read = readRack(text);
    expect('fault' in read && read.fault).toMatch(says);
  });

  it('brings in new pieces, keeps bookings of both sides and marks anew what has a mark that is taken', () => {
    const here = [piece('R1', { usedUp: booking('Shop', 'B') }), piece('R2'), piece('R3')];
    const brought = [
      piece('R1'),
      piece('R2', { usedUp: booking('Bar', 'A') }),
      piece('R3', { key: 'another' }),
      piece('R9'),
    ];
    const { put, marked } = bringIn(here, brought);
    expect(marked).toEqual([{ before: 'R3', now: 'R10' }]);
    expect(put.map(({ id, key, usedUp }) => [id, key, usedUp?.job])).toEqual([
      ['R2', 'key-R2', 'Bar'],
      ['R10', 'another', undefined],
      ['R9', 'key-R9', undefined],
    ]);
  });
});
