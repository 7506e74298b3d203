import { describe, expect, it } from 'vitest';
import { emptyJob, newWall, newZone } from '../../core/job/defaults';
import { jobDifferences } from '../../core/job/differences/differences';
import { readJobObject } from '../../core/job/read';
import type { Job, Zone } from '../../core/job/schema';

const empty = emptyJob('Studio');
const plain = newWall('A', 'Proofing wall', 6000, 3000);
const zone = newZone(empty, plain, { x: 1000, y: 1000, width: 2000, height: 1000 }, 'writable');
const layers = [{ kind: 'chalk', product: 'chalk-coat', over: 'face' }] as const;
const product = {
  id: 'P1',
  name: 'Slate coat',
  layer: 'chalk',
  unit: 'l',
  packs: [{ size: 2.5, price: 40 }],
  coats: 2,
  drying: 'none',
} as const;

function jobWith(patch: Partial<Zone>, rest: object = {}): Job {
  const job = {
    ...empty,
    buildUps: [{ id: 'B1', name: 'Slate', kind: 'chalk', layers: [...layers] }],
    products: [{ ...product, packs: [...product.packs] }],
    walls: [{ ...plain, zones: [{ ...zone, ...patch }] }],
    ...rest,
  };
  return job as unknown as Job;
}
const faultsOf = (job: Job) =>
  readJobObject(JSON.parse(JSON.stringify(job)) as Record<string, unknown>).findings.filter(
    ({ level }) => level === 'error',
  );

describe('references of build-ups', () => {
  it('lead somewhere in a sound job', () => {
    expect(faultsOf(jobWith({ layers: 'B1', edges: [{ edge: 1, end: 'trim' }] }))).toEqual([]);
  });

  it('of a zone lead to a build-up of the job', () => {
    expect(faultsOf(jobWith({ layers: 'B7' }))).toMatchObject([
      {
        code: 'unknown-layers',
        wall: 'A',
        object: 'Z1',
        text: 'walls[0].zones[0].layers (zone Z1 of wall A) is "B7", but no build-up of the job has that id; name one of B1, or take the field out for the ready layers.',
      },
    ]);
    expect(faultsOf(jobWith({ layers: 'B7' }, { buildUps: [] }))[0]!.text).toContain(
      'it has none of its own: add it',
    );
  });

  it('also of another alternative', () => {
    const alternatives = [{ id: 'L', name: '', zones: { A: [{ ...zone, layers: 'B7' }] } }];
    expect(faultsOf(jobWith({}, { alternatives })).map(({ code }) => code)).toEqual(['unknown-layers']);
  });

  it('name one thing each', () => {
    const twice = [product, { ...product, name: 'Other' }];
    expect(faultsOf(jobWith({}, { products: twice }))[0]!.text).toBe(
      'products[1].id (product P1) is "P1", which products[0].id has already; give one of them another id.',
    );
    const built = { id: 'B1', name: '', kind: 'chalk', layers: [] };
    expect(faultsOf(jobWith({}, { buildUps: [built, built] })).map(({ code }) => code)).toEqual([
      'duplicate-id',
    ]);
  });

  it('choose one end for an edge', () => {
    const edges: Zone['edges'] = [
      { edge: 2, end: 'trim' },
      { edge: 2, end: 'feather', width: 300 },
    ];
    expect(faultsOf(jobWith({ edges }))[0]!.text).toBe(
      'walls[0].zones[0].edges[1].edge (zone Z1 of wall A) is 2, for which walls[0].zones[0].edges[0] chooses an end already; take one of them out.',
    );
  });
});

describe('differences of build-ups', () => {
  const said = (before: Job, after: Job) => jobDifferences(before, after).map(({ text }) => text);
  const before = jobWith({});

  it('say which layers a zone has and how its edges end', () => {
    const after = jobWith({ layers: 'B1', edges: [{ edge: 3, end: 'feather', width: 300 }] });
    expect(said(before, after)).toEqual([
      'Zone Z1: layers build-up B1 instead of the ready ones.',
      'Zone Z1: ends of edges edge 3 feather 300 mm instead of as usual.',
    ]);
    expect(said(after, before)).toEqual([
      'Zone Z1: layers the ready ones instead of build-up B1.',
      'Zone Z1: ends of edges as usual instead of edge 3 feather 300 mm.',
    ]);
  });

  it('say what came, went and changed of products and build-ups', () => {
    const none = jobWith({}, { products: undefined, buildUps: undefined });
    expect(said(none, before)).toEqual([
      'Product P1 (Slate coat) is new: for chalk.',
      'Build-up B1 (Slate) is new: chalk “chalk-coat”.',
    ]);
    expect(said(before, none)).toEqual([
      'Product P1 (Slate coat) is gone: it was for chalk.',
      'Build-up B1 (Slate) is gone: it was chalk “chalk-coat”.',
    ]);
    const dearer = jobWith({}, { products: [{ ...product, packs: [{ size: 2.5, price: 44 }], cure: 72 }] });
    expect(said(before, dearer)).toEqual([
      'Product P1 (Slate coat): packs 2.5 at 44 instead of 2.5 at 40.',
      'Product P1 (Slate coat): cure 72 h instead of none.',
    ]);
    const thicker = jobWith(
      {},
      { buildUps: [{ ...before.buildUps![0]!, layers: [{ ...layers[0], coats: 3 }] }] },
    );
    expect(said(before, thicker)).toEqual([
      'Build-up B1 (Slate): layers chalk “chalk-coat” 3 × instead of chalk “chalk-coat”.',
    ]);
  });
});
