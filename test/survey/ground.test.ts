import { describe, expect, it } from 'vitest';
import { newWall } from '../../core/job/defaults';
import {
  addFixingPoint,
  changeFixingPoint,
  changeGround,
  newFixingPoint,
  removeFixingPoint,
} from '../../core/job/ground';
import { reactionToFire, type Ground } from '../../core/job/ground-schema';
import { readJobObject } from '../../core/job/read';
import type { Job, Wall } from '../../core/job/schema';
import { emptyJob } from '../../core/job/defaults';
import { rectangleVertices } from '../../core/job/shape';
import { groundBlanks, reservationsOf } from '../../core/survey/ground-blanks';
import { groundFindings } from '../../core/survey/ground-findings';
import { parseFire } from '../../web/schedule/ground-words';

function wallWith(buildUps: readonly string[], ground?: Ground, rest: Partial<Wall> = {}): Wall {
  const zones = buildUps.map((buildUp, i) => ({
    id: `Z${i + 1}`,
    name: '',
    shape: rectangleVertices({ x: 1000 * i, y: 500, width: 900, height: 900 }),
    holes: [],
    buildUp,
  }));
  return { ...newWall('A', '', 5400, 2700), zones, ...(ground && { ground }), ...rest };
}

const blanksOf = (wall: Wall) => groundBlanks(wall).map(({ field }) => field);
const codesOf = (wall: Wall) => groundFindings(wall).map(({ code }) => code);

/** A ground of which nothing more is asked. */
const known: Ground = {
  material: 'concrete',
  hollow: 3,
  moisture: { value: 1.2, unit: 'CM-%' },
  suction: 'normal',
  exposure: 'dry',
  escapeRoute: false,
};

describe('what of the ground is not recorded', () => {
  it('is asked only where something is planned that depends on it', () => {
    expect(blanksOf(wallWith([]))).toEqual([]);
    expect(blanksOf(wallWith(['steel-panel']))).toEqual(['escapeRoute', 'material', 'hollow', 'moisture']);
    expect(blanksOf(wallWith(['magnetic-film']))).toEqual(['escapeRoute', 'material', 'hollow']);
    expect(blanksOf(wallWith(['writable']))).toEqual(['escapeRoute', 'material']);
    expect(blanksOf(wallWith(['writable'], { material: 'brick', escapeRoute: true }))).toEqual([
      'fire',
      'suction',
    ]);
    expect(blanksOf(wallWith(['chalk'], { material: 'old-coating', escapeRoute: false }))).toEqual([
      'adhesion',
    ]);
    expect(blanksOf(wallWith(['steel-panel', 'magnetic-film', 'writable'], known))).toEqual([]);
  });

  it('is one note a wall that names all of it, and a reservation each', () => {
    const wall = wallWith(['steel-panel'], { material: 'concrete' });
    expect(groundFindings(wall)).toEqual([
      {
        level: 'note',
        code: 'ground-not-recorded',
        wall: 'A',
        text: expect.stringContaining(
          'not recorded whether it is on an escape route, how flat it is and how moist it is.',
        ),
      },
    ]);
    expect(reservationsOf(wall)).toHaveLength(3);
    expect(reservationsOf(wallWith(['steel-panel'], known))).toEqual([]);
  });

  it('is told apart from a wall that nobody has measured', () => {
    const wall = wallWith(['steel-panel'], known, { surveyed: false });
    expect(groundFindings(wall)[0]).toMatchObject({ level: 'warning', code: 'not-surveyed' });
    expect(reservationsOf(wall)[0]).toMatch(/budget only, subject to survey/);
    expect(codesOf({ ...wall, surveyed: true })).toEqual([]);
  });
});

describe('grounds that will not do (limits: common practice, no source)', () => {
  it.each([
    ['steel-panel', { hollow: 5 }, []],
    ['steel-panel', { hollow: 6 }, ['ground-hollow-steel']],
    ['magnetic-film', { hollow: 3 }, ['ground-unlevel-film']],
    ['writable', { hollow: 9 }, []],
    ['steel-panel', { exposure: 'damp' }, ['ground-damp-steel']],
    ['steel-panel', { exposure: 'outdoor' }, ['ground-damp-steel']],
    ['writable', { exposure: 'damp' }, []],
    ['steel-panel', { moisture: { value: 2.1, unit: 'CM-%' } }, ['ground-damp-steel']],
    [
      'steel-panel',
      { material: 'gypsum-board', moisture: { value: 1.5, unit: 'CM-%' } },
      ['ground-damp-steel'],
    ],
    ['steel-panel', { material: 'timber', moisture: { value: 11, unit: '%' } }, []],
    ['steel-panel', { moisture: { value: 90, unit: 'digits' } }, []],
    ['writable', { suction: 'strong' }, ['ground-strong-suction']],
    ['steel-panel', { exposure: 'heated-behind' }, ['ground-heated']],
    ['steel-panel', { escapeRoute: true, fire: 'B-s1,d0' }, []],
  ] as const)('%s on %j: %j', (buildUp, patch, codes) => {
    expect(codesOf(wallWith([buildUp], { ...known, ...patch } as Ground))).toEqual(codes);
  });

  /* ISO 2409:2020, Table 1 (from memory): class 0 no square detached, class 5 worst; ASTM D3359, 5B none, 0B worst. */
  it.each([
    ['ISO 16276-2', 2, true],
    ['ISO 16276-2', 3, false],
    ['ASTM D3359', 3, true],
    ['ASTM D3359', 2, false],
    ['ISO 4624', 0.5, true],
    ['EN 1542', 0.4, false],
  ] as const)('an old coating of %s %d holds: %s', (test, result, holds) => {
    const wall = wallWith(['steel-panel'], { ...known, material: 'old-coating', adhesion: { test, result } });
    expect(codesOf(wall)).toEqual(holds ? [] : ['ground-old-coating']);
  });
});

/* EN 13501-1, classes for building products other than floorings (from memory). */
describe('a class of reaction to fire', () => {
  it.each(['A1', 'A2-s1,d0', 'B-s3,d2', 'C-s2,d1', 'D-s1,d0', 'E', 'E-d2', 'F', 'none'])(
    '%s is one',
    (fire) => {
      expect(fire).toMatch(reactionToFire);
      expect(parseFire(fire)).toEqual({ value: fire });
    },
  );
  it.each(['G', 'A1-s1', 'B', 'B-s4,d0', 'F-d2', 'fireproof'])('%s is none', (fire) => {
    expect(parseFire(fire)).toHaveProperty('fault');
  });
  it.each([
    ['b s1 d0', 'B-s1,d0'],
    ['A2 - s1, d0', 'A2-s1,d0'],
    ['e d2', 'E-d2'],
    ['', undefined],
  ])('%j is read as %s', (typed, fire) => expect(parseFire(typed)).toEqual({ value: fire }));
});

describe('ground and fixing points in the job', () => {
  const job: Job = { ...emptyJob(), walls: [newWall('A', '', 4200, 2600)] };

  it('leave no trace once nothing is recorded', () => {
    const once = changeGround(job, 'A', { hollow: 4 });
    expect(once.walls[0]!.ground).toEqual({ hollow: 4 });
    expect(changeGround(once, 'A', { hollow: undefined })).toEqual(job);
    expect(changeGround(once, 'A', { hollow: 4 })).toBe(once);
  });

  it('go in, change and come out, under ids that nothing else has', () => {
    const stud = newFixingPoint(job.walls[0]!, 'stud', { x: 625, y: 900 });
    expect(stud).toEqual({ id: 'U1', kind: 'stud', x: 600, y: 0, width: 50, height: 2600 });
    const one = addFixingPoint(job, 'A', stud);
    const hole = newFixingPoint(one.walls[0]!, 'hole', { x: 100, y: 200 });
    const two = changeFixingPoint(addFixingPoint(one, 'A', hole), 'A', hole.id, { width: 10 });
    expect(two.walls[0]!.fixingPoints![1]).toEqual({ id: 'X1', kind: 'hole', x: 100, y: 200, width: 10 });
    expect(readJobObject(two).findings).toEqual([]);
    expect(removeFixingPoint(removeFixingPoint(two, 'A', 'U1'), 'A', 'X1')).toEqual(job);
  });

  it('are refused with the place that is wrong', () => {
    const bad = { ...job, walls: [{ ...job.walls[0]!, ground: { hollow: -1 } }] };
    expect(readJobObject(bad).findings[0]!.text).toMatch(/ground\.hollow/);
    const twice = addFixingPoint(job, 'A', newFixingPoint(job.walls[0]!, 'hole'));
    const doubled = addFixingPoint(twice, 'A', newFixingPoint(job.walls[0]!, 'hole'));
    expect(readJobObject(doubled).findings[0]!.code).toBe('duplicate-id');
  });
});
