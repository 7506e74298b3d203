import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addFitting,
  addZone,
  changeObject,
  changeStock,
  changeWall,
  fitObject,
  moveObject,
  removeObject,
} from '../../../core/job/changes';
import { emptyJob, newFitting, newWall, newZone } from '../../../core/job/defaults';
import type { DifferenceKind } from '../../../core/job/differences/difference';
import { jobDifferences } from '../../../core/job/differences/differences';
import { readJobObject } from '../../../core/job/read';
import type { Fitting, Job, Zone } from '../../../core/job/schema';
import { boxOfVertices, type ObjectRef } from '../../../core/job/shape';
import { jobFile } from '../random-job';

const opposite = { added: 'removed', removed: 'added', moved: 'moved', changed: 'changed' } as const;

/** Ten sockets far apart and four zones, so that every change has a thing of its own. */
function print(): Job {
  const empty = emptyJob('Studio');
  let wall = newWall('A', 'Proofing wall', 12_000, 2600);
  for (let i = 0; i < 10; i++) {
    wall = { ...wall, fittings: [...wall.fittings, newFitting(wall, 'socket', { x: 500 + 1000 * i })] };
  }
  for (let i = 0; i < 4; i++) {
    const box = { x: 500 + 2500 * i, y: 900, width: 1500, height: 1000 };
    wall = { ...wall, zones: [...wall.zones, newZone(empty, wall, box)] };
  }
  return { ...empty, walls: [wall] };
}

const before = print();

/** A change and the only thing that may be said of it. */
interface Known {
  readonly on: string;
  readonly change: (job: Job) => Job;
  readonly kind: DifferenceKind;
  readonly text: string;
}

const fitting = (n: number): ObjectRef => ({ kind: 'fitting', id: `K${n}` });
const zone = (n: number): ObjectRef => ({ kind: 'zone', id: `Z${n}` });
const step = fc.integer({ min: 1, max: 300 });
const socketNumber = fc.integer({ min: 1, max: 10 });
const zoneNumber = fc.integer({ min: 1, max: 4 });

const known: fc.Arbitrary<Known> = fc.oneof(
  fc.tuple(socketNumber, step).map(([n, by]) => ({
    on: `K${n}`,
    change: (job: Job) => moveObject(job, 'A', fitting(n), by, -by),
    kind: 'moved' as const,
    text: `Socket K${n} moved ${by} mm right and ${by} mm down.`,
  })),
  socketNumber.map((n) => ({
    on: `K${n}`,
    change: (job: Job) => removeObject(job, 'A', fitting(n)),
    kind: 'removed' as const,
    text: `Socket K${n} is gone: it was 146 × 86 mm at (${500 + 1000 * (n - 1)}, 257).`,
  })),
  fc.tuple(socketNumber, step).map(([n, mm]) => ({
    on: `K${n}`,
    change: (job: Job) => changeObject<Fitting>(job, 'A', fitting(n), { clearance: 5 + mm }),
    kind: 'changed' as const,
    text: `Socket K${n}: clearance ${5 + mm} mm instead of 5 mm.`,
  })),
  fc.tuple(zoneNumber, step).map(([n, by]) => ({
    on: `Z${n}`,
    change: (job: Job) => {
      const box = boxOfVertices(job.walls[0]!.zones.find(({ id }) => id === `Z${n}`)!.shape);
      return fitObject(job, 'A', zone(n), { ...box, width: box.width + by });
    },
    kind: 'changed' as const,
    text: `Zone Z${n} is ${by} mm wider on the right.`,
  })),
  zoneNumber.map((n) => ({
    on: `Z${n}`,
    change: (job: Job) => changeObject<Zone>(job, 'A', zone(n), { buildUp: 'steel-panel-chalk' }),
    kind: 'changed' as const,
    text: `Zone Z${n}: build-up steel panels, chalk instead of steel panels.`,
  })),
  fc.integer({ min: 20, max: 40 }).map((n) => ({
    on: `N${n}`,
    change: (job: Job) =>
      addFitting(job, 'A', { ...newFitting(job.walls[0]!, 'switch', { x: 100 * n, y: 1400 }), id: `N${n}` }),
    kind: 'added' as const,
    text: `Switch N${n} is new: 86 × 86 mm at (${100 * n}, 1400).`,
  })),
  fc.integer({ min: 20, max: 40 }).map((n) => ({
    on: `Y${n}`,
    change: (job: Job) =>
      addZone(job, 'A', {
        ...newZone(job, job.walls[0]!, { x: 10_800, y: 100 + n, width: 40, height: 30 }, 'chalk'),
        id: `Y${n}`,
      }),
    kind: 'added' as const,
    text: `Zone Y${n} is new: 40 × 30 mm at (10800, ${100 + n}).`,
  })),
  step.map((price) => ({
    on: 'stock',
    change: (job: Job) => changeStock(job, 'S1', { price: 1000 + price }),
    kind: 'changed' as const,
    text: `price ${1000 + price} instead of`,
  })),
  step.map((rim) => ({
    on: 'rim',
    change: (job: Job) => changeWall(job, 'A', (wall) => ({ ...wall, rim: { ...wall.rim, ceiling: rim } })),
    kind: 'changed' as const,
    text: `Wall A (Proofing wall): rim at the ceiling ${rim} mm instead of 0 mm.`,
  })),
);

describe('a list of known changes', () => {
  it('is found again, all of it and nothing else', () => {
    fc.assert(
      fc.property(fc.uniqueArray(known, { selector: ({ on }) => on, maxLength: 12 }), (changes) => {
        const after = changes.reduce((job, { change }) => change(job), before);
        const found = jobDifferences(before, after);
        expect(found).toHaveLength(changes.length);
        for (const { kind, text } of changes) {
          expect(found.filter((one) => one.kind === kind && one.text.includes(text))).toHaveLength(1);
        }
        const back = jobDifferences(after, before).map(({ kind }) => opposite[kind]);
        expect(back.sort()).toEqual(found.map(({ kind }) => kind).sort());
      }),
      { numRuns: 200, seed: 11 },
    );
  });
});

describe('any two jobs', () => {
  const read = jobFile.map((file) => readJobObject(file).job).filter((job) => job !== null);

  it('a job does not differ from itself, nor from itself written out', () => {
    fc.assert(
      fc.property(read, (job) => {
        expect(jobDifferences(job, job)).toEqual([]);
        expect(jobDifferences(job, JSON.parse(JSON.stringify(job)) as Job)).toEqual([]);
      }),
      { numRuns: 150, seed: 12 },
    );
  });

  it('what comes one way goes the other way', () => {
    fc.assert(
      fc.property(read, read, (one, other) => {
        const kinds = (list: ReturnType<typeof jobDifferences>) => (kind: DifferenceKind) =>
          list.filter((difference) => difference.kind === kind).length;
        const [there, back] = [kinds(jobDifferences(one, other)), kinds(jobDifferences(other, one))];
        for (const kind of ['added', 'removed', 'moved', 'changed'] as const) {
          expect(back(opposite[kind])).toBe(there(kind));
        }
        for (const { text } of jobDifferences(one, other)) expect(text).toMatch(/^[^\n]+\.$/);
      }),
      { numRuns: 150, seed: 13 },
    );
  });
});
