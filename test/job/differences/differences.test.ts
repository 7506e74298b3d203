import { describe, expect, it } from 'vitest';
import { chooseAlternative, copyAlternative } from '../../../core/job/alternatives';
import {
  addFitting,
  addOpening,
  addWall,
  addZone,
  changeObject,
  changeStock,
  changeWall,
  fitObject,
  insertVertex,
  moveObject,
  moveVertex,
  removeObject,
  removeWall,
  reorderZone,
  resizeOutline,
} from '../../../core/job/changes';
import { emptyJob, newFitting, newOpening, newWall, newZone } from '../../../core/job/defaults';
import { jobDifferences } from '../../../core/job/differences/differences';
import type { Fitting, Job, Wall, Zone } from '../../../core/job/schema';

const socket = { kind: 'fitting', id: 'K1' } as const;
const pipe = { kind: 'fitting', id: 'P1' } as const;
const zone = { kind: 'zone', id: 'Z1' } as const;
const second = { kind: 'zone', id: 'Z2' } as const;

function studio(): Job {
  const empty = emptyJob('Studio');
  const bare = newWall('A', 'Proofing wall', 4200, 2600);
  const fittings = [newFitting(bare, 'socket', { x: 1500 }), newFitting(bare, 'pipe', { x: 3000 })];
  const wall: Wall = { ...bare, openings: [newOpening(bare, 'door', { x: 300 })], fittings };
  const first = newZone(empty, wall, { x: 1500, y: 900, width: 2000, height: 1000 });
  const withFirst = { ...wall, zones: [first] };
  const other = newZone(empty, withFirst, { x: 1500, y: 2000, width: 500, height: 300 }, 'writable');
  return { ...empty, walls: [{ ...wall, zones: [first, other] }, newWall('B', '', 3000, 2500)] };
}

const job = studio();
const texts = (after: Job, before = job) => jobDifferences(before, after).map(({ text }) => text);
const wallOf = (of: Job) => of.walls[0]!;

describe('jobDifferences', () => {
  it.each<[string, Job, string[]]>([
    ['nothing', job, []],
    ['a copy of every object', JSON.parse(JSON.stringify(job)) as Job, []],
    ['lengths within 0.01 mm', moveObject(job, 'A', socket, 0.01, -0.01), []],
    ['a place', moveObject(job, 'A', socket, 120, 50), ['Socket K1 moved 120 mm right and 50 mm up.']],
    ['a place beyond 0.01 mm', moveObject(job, 'A', socket, -0.02, 0), ['Socket K1 moved 0.02 mm left.']],
    ['a round thing', moveObject(job, 'A', pipe, 0, -30.5), ['Pipe P1 moved 30.5 mm down.']],
    [
      'a diameter',
      fitObject(job, 'A', pipe, { x: 2980, y: 180, width: 50, height: 50 }),
      ['Pipe P1 moved 15 mm left and 5 mm up.', 'Pipe P1 has a diameter of 50 mm instead of 40 mm.'],
    ],
    [
      'a zone on one side',
      fitObject(job, 'A', zone, { x: 1500, y: 900, width: 2200, height: 1000 }),
      ['Zone Z1 is 200 mm wider on the right.'],
    ],
    [
      'a zone on three sides',
      fitObject(job, 'A', zone, { x: 1450, y: 950, width: 2200, height: 950 }),
      ['Zone Z1 is 200 mm wider (left 50 mm left, right 150 mm right) and 50 mm shorter at the foot.'],
    ],
    [
      'a zone wider and moved up',
      fitObject(job, 'A', zone, { x: 1400, y: 1000, width: 2100, height: 1000 }),
      ['Zone Z1 moved 100 mm up.', 'Zone Z1 is 100 mm wider on the left.'],
    ],
    [
      'another build-up and name',
      changeObject<Zone>(job, 'A', second, { buildUp: 'chalk', name: 'Week' }),
      [
        'Zone Z2 (Week): name “Week” instead of none.',
        'Zone Z2 (Week): build-up chalk coat instead of writable coat.',
      ],
    ],
    [
      'a layout',
      changeObject<Zone>(job, 'A', zone, {
        layout: { ...wallOf(job).zones[0]!.layout!, start: { x: 1500, y: 900 }, jointGap: 2 },
      }),
      ['Zone Z1: start at (1500, 900) instead of “best”.', 'Zone Z1: joint gap 2 mm instead of 0 mm.'],
    ],
    [
      'a clearance',
      changeObject<Fitting>(job, 'A', socket, { clearance: 12 }),
      ['Socket K1: clearance 12 mm instead of 5 mm.'],
    ],
    [
      'a field of another program',
      changeObject(job, 'A', socket, { circuit: 7 } as object),
      ['Socket K1: circuit 7 instead of none.'],
    ],
    [
      'the order of zones',
      reorderZone(job, 'A', 'Z1', 1),
      ['The zones are listed in another order: Z2, Z1.'],
    ],
    ['the width of a wall', resizeOutline(job, 'B', 3100, 2500), ['Wall B is 100 mm wider on the right.']],
    [
      'a corner',
      moveVertex(job, 'B', null, 2, { x: 3000, y: 2400 }),
      ['Wall B has another shape: a corner moved 100 mm down.'],
    ],
    [
      'one corner more',
      insertVertex(job, 'B', null, 3, { x: 1500, y: 2700 }),
      ['Wall B has another shape (5 corners instead of 4).', 'Wall B is 200 mm taller at the top.'],
    ],
    [
      'a rim',
      changeWall(job, 'A', (wall) => ({ ...wall, rim: { ...wall.rim, ceiling: 20 } })),
      ['Wall A (Proofing wall): rim at the ceiling 20 mm instead of 0 mm.'],
    ],
    [
      'a price',
      changeStock(job, 'S1', { price: 9.99 }),
      [expect.stringMatching(/^Stock sheet S1 .*: price 9\.99 instead of /) as string],
    ],
    ['kerf', { ...job, cutting: { ...job.cutting, kerf: 3 } }, ['Cutting: kerf 3 mm instead of 0 mm.']],
    [
      'the client',
      { ...job, client: 'Quire & Daughters' },
      ['The job: client “Quire & Daughters” instead of none.'],
    ],
    ['letter and date alone', { ...job, revision: 'C', date: '2026-05-04' }, []],
    ['where an outline begins', turnOutline(job), []],
    ['a wall', removeWall(job, 'B'), ['Wall B is gone: 3000 × 2500 mm.']],
    [
      'another wall',
      addWall(job, newWall('C', 'Stair wall', 2000, 2500)),
      ['Wall C (Stair wall) is new: 2000 × 2500 mm.'],
    ],
  ])('%s', (_, after, expected) => {
    const said = texts(after);
    expect(said).toEqual(expected);
    // Nothing is worded as moved or changed one way that is not the other way too.
    expect(jobDifferences(after, job)).toHaveLength(said.length);
  });

  it('tells what came and what went, and where', () => {
    const window = newOpening(wallOf(job), 'window', { x: 2000, y: 1000 });
    const after = addOpening(removeObject(job, 'A', socket), 'A', window);
    expect(jobDifferences(job, after)).toEqual([
      expect.objectContaining({
        kind: 'added',
        subject: 'opening',
        object: 'W1',
        wall: 'A',
        text: 'Window W1 is new: 1200 × 1200 mm at (2000, 1000).',
      }),
      expect.objectContaining({ kind: 'removed', subject: 'fitting', object: 'K1', wall: 'A' }),
    ]);
  });

  it('knows a thing again under another id by where it is, and a wall by its outline', () => {
    const other = changeWall(job, 'A', (wall) => ({
      ...wall,
      id: 'N',
      fittings: wall.fittings.map((fitting) => ({ ...fitting, id: `${fitting.id}0` })),
    }));
    expect(texts(moveObject(other, 'N', { kind: 'fitting', id: 'K10' }, 20, 0))).toEqual([
      'Wall N (Proofing wall) was listed as A before.',
      'Socket K10 was listed as K1 before.',
      'Socket K10 moved 20 mm right.',
      'Pipe P10 was listed as P1 before.',
    ]);
  });

  it('takes a far one of another id for another thing', () => {
    const far = addFitting(removeObject(job, 'A', socket), 'A', {
      ...newFitting(wallOf(job), 'socket', { x: 3500 }),
      id: 'K9',
    });
    expect(jobDifferences(job, far).map(({ kind }) => kind)).toEqual(['added', 'removed']);
  });

  it('tells of holes only what does not go along with their zone', () => {
    const hole: [number, number][] = [
      [1600, 1000],
      [1700, 1000],
      [1700, 1100],
    ];
    const holed = changeObject<Zone>(job, 'A', zone, { holes: [hole] });
    expect(texts(holed)).toEqual(['Zone Z1 has 1 hole instead of 0.']);
    expect(texts(moveObject(holed, 'A', zone, 10, 0), holed)).toEqual(['Zone Z1 moved 10 mm right.']);
    const elsewhere = changeObject<Zone>(holed, 'A', zone, {
      holes: [hole.map(([x, y]): [number, number] => [x + 50, y])],
    });
    expect(texts(elsewhere, holed)).toEqual(['Zone Z1 has its holes elsewhere or of another shape.']);
  });

  it('tells of alternatives which is chosen and which came', () => {
    const two = copyAlternative(job, 'V1', 'Wider');
    expect(texts(two)).toEqual(['Alternative “Wider” is new.']);
    expect(texts(chooseAlternative(two, 'V2'), two)).toEqual([
      '“Wider” is the chosen alternative instead of “Alternative 1”.',
    ]);
    const grown = chooseAlternative(
      addZone(chooseAlternative(two, 'V2'), 'B', { ...wallOf(job).zones[1]!, id: 'Z1' }),
      'V1',
    );
    expect(texts(grown, two)).toEqual(['Alternative “Wider”, which is not chosen, is not as before.']);
  });
});

function turnOutline(of: Job): Job {
  return changeWall(of, 'B', (wall) => ({
    ...wall,
    outline: [...wall.outline.slice(2), ...wall.outline.slice(0, 2)],
  }));
}
