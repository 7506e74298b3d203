import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addZone, changeStock, changeWall, moveObject } from '../../../core/job/changes';
import { emptyJob, newWall, newZone } from '../../../core/job/defaults';
import { jobDifferences } from '../../../core/job/differences/differences';
import { addHung, changeHung, putMagnet, setPeopleBelow, setPullTests } from '../../../core/job/hung';
import { newHung } from '../../../core/job/hung-kinds';
import { bringHungKinds, changeHungKind } from '../../../core/job/own-hung-kinds';
import type { MagnetRecord } from '../../../core/job/magnet-schema';
import type { Job } from '../../../core/job/schema';

const magnet: MagnetRecord = {
  ...{ id: 'MG1', name: 'studio', shape: 'disc', diameter: 20, height: 5, material: 'neodymium' },
  ...{ remanence: 1.28, recoil: 1.05, contact: 'metal', cover: 0 },
};
const test = { id: 'T1', magnet: 'MG1', between: 0, readings: [15, 14.5, 16] };
const kind = { name: 'Proof rail', item: { width: 600, height: 50, depth: 15 } };

function studio(): Job {
  const empty = emptyJob('Studio');
  const wall = newWall('A', 'Proofing wall', 6000, 2600);
  let job: Job = { ...empty, walls: [wall] };
  job = addZone(job, 'A', newZone(job, wall, { x: 500, y: 500, width: 4000, height: 1500 }));
  for (const x of [700, 1700, 2700])
    job = addHung(job, 'A', newHung(job, job.walls[0]!, 'print', { x, y: 900 }));
  job = setPeopleBelow(job, 'A', [{ id: 'B1', kind: 'seat', x: 0, width: 1000 }]);
  return bringHungKinds(putMagnet(setPullTests(job, 'A', 'Z1', [test]), magnet), [kind]);
}

const before = studio();
const [h1, h2, h3] = before.walls[0]!.hung!.map(({ id }) => id) as [string, string, string];

/** Changes of different things, each with what alone may be said of it. */
const changes: readonly (readonly [change: (job: Job) => Job, says: string])[] = [
  [(job) => moveObject(job, 'A', { kind: 'hung', id: h1 }, 120, 0), 'moved 120 mm right'],
  [(job) => changeHung(job, 'A', h2, { weight: 0.4 }), 'weight 0.4 kg instead of 0.15 kg'],
  [(job) => changeHung(job, 'A', h3, { stop: true }), 'has a mechanical stop now'],
  [
    (job) => changeHung(job, 'A', h3, { magnets: { magnet: 'MG1', places: [[20, 20]] } }),
    'magnets 1 × MG1 at (20, 20) instead of 4 × N42-20x5 at',
  ],
  [
    (job) => setPeopleBelow(job, 'A', [{ id: 'B1', kind: 'bed', x: 0, width: 1000 }]),
    'who bed instead of seat',
  ],
  [
    (job) => setPullTests(job, 'A', 'Z1', [{ ...test, readings: [15, 14, 16] }]),
    'readings 15 N, 14 N, 16 N instead of 15 N, 14.5 N, 16 N',
  ],
  [
    (job) => putMagnet(job, { ...magnet, rated: { force: 47, thickness: 10, gap: 0 } }),
    'maker’s pull 47 N on 10 mm across 0 mm instead of none',
  ],
  [(job) => putMagnet(job, { ...magnet, id: 'MG2', name: 'other', height: 9 }), 'Magnet MG2 (other) is new'],
  [
    (job) => changeHungKind(job, kind.name, { item: { ...kind.item, weight: 0.3 } }),
    'weight 0.3 kg instead of not known',
  ],
  [(job) => bringHungKinds(job, [{ ...kind, name: 'Ink shelf' }]), '“Ink shelf” is new'],
  [
    (job) => changeStock(job, job.stock[0]!.id, { steel: 'ferritic-stainless' }),
    'kind of steel ferritic stainless instead of low carbon',
  ],
  [
    (job) =>
      changeStock(job, job.stock[0]!.id, { thicknessOrder: { standard: 'EN 10131', tolerance: 'special' } }),
    'thickness ordered to EN 10131, special tolerance instead of none',
  ],
];

describe('what hangs, in the differences of two jobs', () => {
  it('nothing is said if and only if nothing changed, and each change once', () => {
    fc.assert(
      fc.property(fc.subarray([...changes]), (chosen) => {
        const after = chosen.reduce((job, [change]) => change(job), before);
        const found = jobDifferences(before, after).map(({ text }) => text);
        expect(found).toHaveLength(chosen.length);
        for (const [, says] of chosen) expect(found.filter((text) => text.includes(says))).toHaveLength(1);
        expect(jobDifferences(after, before)).toHaveLength(chosen.length);
      }),
      { numRuns: 150, seed: 31 },
    );
  });

  it('nobody below is not the same as nobody has said', () => {
    const nobody = setPeopleBelow(before, 'A', []);
    const unsaid = setPeopleBelow(before, 'A', undefined);
    expect(jobDifferences(unsaid, nobody).map(({ text }) => text)).toEqual([
      'People below wall A: nobody instead of not said.',
    ]);
    expect(jobDifferences(before, unsaid).length).toBeGreaterThan(0);
  });

  it('an item that came and one that went are told with their places', () => {
    const gone = changeWall(before, 'A', (wall) => ({ ...wall, hung: wall.hung!.slice(1) }));
    const [said, ...more] = jobDifferences(before, gone);
    expect(more).toEqual([]);
    expect(said).toMatchObject({ kind: 'removed', subject: 'hung', wall: 'A', object: h1 });
    expect(said!.places).toEqual([{ x: 700, y: 900, width: 420, height: 594 }]);
  });
});
