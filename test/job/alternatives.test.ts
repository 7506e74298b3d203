import { describe, expect, it } from 'vitest';
import {
  addEmptyAlternative,
  alternativesOf,
  chooseAlternative,
  chosenTitle,
  copyAlternative,
  hasAlternatives,
  jobOfAlternative,
  removeAlternative,
  renameAlternative,
  reorderAlternative,
} from '../../core/job/alternatives';
import { copyWall, moveObject, removeWall } from '../../core/job/changes';
import { emptyJob, newWall, newZone } from '../../core/job/defaults';
import { readJob, readJobObject } from '../../core/job/read';
import type { Job } from '../../core/job/schema';
import { writeJob } from '../../core/job/write';

function studio(): Job {
  const empty = emptyJob('Studio');
  const walls = ['A', 'B'].map((id) => {
    const bare = newWall(id, '', 4200, 2600);
    return { ...bare, zones: [newZone(empty, bare, { x: 1000, y: 800, width: 2000, height: 1000 })] };
  });
  return { ...empty, walls };
}

const job = studio();
const titles = (of: Job) =>
  alternativesOf(of).map(({ title, isChosen }) => (isChosen ? `[${title}]` : title));
/** Copied twice, an empty one beside them: V1 chosen, V2, V4 (copy of V2), V3 empty. */
const several = copyAlternative(
  addEmptyAlternative(copyAlternative(job, 'V1', 'Wider'), 'Bare'),
  'V2',
  'Wider still',
);

describe('alternatives of a job', () => {
  it('a job without any has the one on its walls, and nothing is said of it', () => {
    expect(titles(job)).toEqual(['[Alternative 1]']);
    expect(hasAlternatives(job)).toBe(false);
    expect(chosenTitle(job)).toBeNull();
  });

  it('a copy is listed right after its original and not chosen', () => {
    expect(titles(several)).toEqual(['[Alternative 1]', 'Wider', 'Wider still', 'Bare']);
    expect(several.walls).toBe(job.walls);
    expect(several.alternatives!.map(({ id }) => id)).toEqual(['V2', 'V4', 'V3']);
    expect(several.alternatives![0]!.zones).toEqual({ A: job.walls[0]!.zones, B: job.walls[1]!.zones });
  });

  it('choosing swaps the zones and moves nothing in the list', () => {
    const bare = chooseAlternative(several, 'V3');
    expect(titles(bare)).toEqual(['Alternative 1', 'Wider', 'Wider still', '[Bare]']);
    expect(bare.walls.map(({ zones }) => zones)).toEqual([[], []]);
    const back = chooseAlternative(bare, 'V1');
    expect(titles(back)).toEqual(titles(several));
    expect(back.walls).toEqual(job.walls);
    expect(back.alternatives).toEqual([
      ...several.alternatives!.slice(0, 2),
      { id: 'V3', name: 'Bare', zones: { A: [], B: [] } },
    ]);
  });

  it('what is drawn in one is not in the other', () => {
    const wider = chooseAlternative(several, 'V2');
    const moved = moveObject(wider, 'A', { kind: 'zone', id: 'Z1' }, 100, 0);
    const back = chooseAlternative(moved, 'V1');
    expect(back.walls).toEqual(job.walls);
    expect(chooseAlternative(back, 'V2').walls).toEqual(moved.walls);
  });

  it('is renamed, reordered and deleted, but never the chosen one', () => {
    expect(titles(renameAlternative(several, 'V1', 'As agreed'))[0]).toBe('[As agreed]');
    expect(titles(renameAlternative(several, 'V3', 'Coating only'))[3]).toBe('Coating only');
    expect(titles(reorderAlternative(several, 'V1', 1))).toEqual([
      'Wider',
      '[Alternative 2]',
      'Wider still',
      'Bare',
    ]);
    expect(titles(reorderAlternative(several, 'V3', -1))).toEqual([
      '[Alternative 1]',
      'Wider',
      'Bare',
      'Wider still',
    ]);
    expect(reorderAlternative(several, 'V1', -1)).toBe(several);
    expect(removeAlternative(several, 'V1')).toBe(several);
    const late = reorderAlternative(several, 'V1', 1);
    expect(titles(removeAlternative(late, 'V2'))).toEqual(['[Alternative 1]', 'Wider still', 'Bare']);
  });

  it('with the last other one gone the file has no list of them', () => {
    const two = copyAlternative(job, 'V1', 'Wider');
    expect(removeAlternative(two, 'V2')).not.toHaveProperty('alternatives');
  });

  it('one alone is the job with its zones and no other beside it', () => {
    const alone = jobOfAlternative(several, 'V3');
    expect(alone).not.toHaveProperty('alternatives');
    expect(alone.walls.every(({ zones }) => zones.length === 0)).toBe(true);
    expect(jobOfAlternative(several, 'V1').walls).toBe(several.walls);
  });

  it('a zone that ran on round a corner which has gone ends at its wall', () => {
    const corner = {
      ...job,
      walls: job.walls.map((wall, i) =>
        i === 0 ? { ...wall, corner: { to: 'B', kind: 'internal' } } : wall,
      ),
    } as Job;
    const runsOn = { wall: 'B', zone: 'Z1' };
    const running = {
      ...corner,
      walls: corner.walls.map((wall, i) =>
        i === 0 ? { ...wall, zones: wall.zones.map((zone) => ({ ...zone, runsOn })) } : wall,
      ),
    } as Job;
    const away = chooseAlternative(addEmptyAlternative(running, 'Bare'), 'V2');
    expect(readJobObject(away).findings).toEqual([]);
    expect(chooseAlternative(away, 'V1').walls).toEqual(running.walls);
    const straight = { ...away, walls: away.walls.map(({ corner: _, ...wall }) => wall) } as Job;
    const back = chooseAlternative(straight, 'V1');
    expect(readJobObject(back).findings).toEqual([]);
    expect(back.walls[0]!.zones[0]).not.toHaveProperty('runsOn');
  });

  it('ids that name nothing change nothing', () => {
    expect(chooseAlternative(several, 'V9')).toBe(several);
    expect(copyAlternative(several, 'V9', 'x')).toBe(several);
    expect(removeAlternative(several, 'V9')).toBe(several);
    expect(renameAlternative(several, 'V9', 'x')).toBe(several);
    expect(reorderAlternative(several, 'V9', 1)).toBe(several);
  });

  it('a wall that goes takes its zones in all of them with it, a copied wall brings them', () => {
    const gone = removeWall(several, 'B');
    expect(gone.alternatives!.map(({ zones }) => Object.keys(zones))).toEqual([['A'], ['A'], []]);
    expect(readJobObject(gone).findings).toEqual([]);
    const copied = copyWall(several, 'A', { id: 'C', name: 'Copy' });
    expect(copied.walls.map(({ id }) => id)).toEqual(['A', 'C', 'B']);
    expect(chooseAlternative(copied, 'V2').walls[1]!.zones).toEqual(job.walls[0]!.zones);
  });
});

describe('alternatives in the file', () => {
  const zone = {
    id: 'Z1',
    shape: [
      [0, 0],
      [500, 0],
      [500, 500],
    ],
    buildUp: 'chalk',
    'x-mine': 3,
  };
  const wall = {
    id: 'constructor',
    outline: [
      [0, 0],
      [3000, 0],
      [3000, 2500],
    ],
  };
  const print = { id: 'H1', kind: 'print', x: 10, y: 10, width: 100, height: 100, depth: 0 };
  const file: Record<string, unknown> & { alternatives: object[] } = {
    format: 'lodeplan-job',
    version: 1,
    name: 'From another program',
    walls: [wall],
    alternatives: [
      {
        id: 'B',
        name: 'Chalk',
        zones: { constructor: [zone] },
        hung: { constructor: [print] },
        'x-own': [1, 2],
      },
      { id: 'V1', zones: {} },
    ],
  };

  it('of another program come back as they were, also after each has been on the walls', () => {
    const read = readJobObject(file).job!;
    const again = readJob(writeJob(read)).job!;
    expect(again).toEqual(read);
    expect(again.alternatives![0]).toMatchObject(file.alternatives[0]!);
    const roundTrip = ['B', 'V1', 'V2', 'B', 'V2'].reduce(chooseAlternative, read);
    expect(roundTrip.alternatives![0]).toEqual(read.alternatives![0]);
    expect(roundTrip.walls).toEqual(read.walls);
    expect(readJob(writeJob(roundTrip)).job).toEqual(roundTrip);
  });

  it('a name of the chosen one that is missing is made up, and taken by no other', () => {
    const read = readJobObject(file).job!;
    expect(alternativesOf(read)).toEqual([
      { id: 'V2', title: 'Alternative 1', isChosen: true },
      { id: 'B', title: 'Chalk', isChosen: false },
      { id: 'V1', title: 'Alternative 3', isChosen: false },
    ]);
  });
});
