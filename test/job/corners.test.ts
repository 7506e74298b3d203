import { describe, expect, it } from 'vitest';
import { checkCorners } from '../../core/job/check-corners';
import { rowOfWall, rowsOfRoom, turnAt } from '../../core/job/corners';
import type { Zone, Job } from '../../core/job/schema';
import { cornerWarnings } from '../../core/job/warn-corners';
import { writeJob } from '../../core/job/write';
import { readJob } from '../../core/job/read';
import { inside, outside, room, steel, wallOf } from './room-walls';

const ids = (job: Job, wall: string) => rowOfWall(job, wall).walls.map(({ id }) => id);
const codes = (job: Job) => cornerWarnings(job).map(({ code }) => code);

describe('the row that a wall stands in', () => {
  const job = room([wallOf('C', 1000), wallOf('A', 2000, inside('B')), wallOf('B', 3000, outside('C'))]);
  it('goes from its left end, whichever wall is asked for', () => {
    for (const id of ['A', 'B', 'C']) expect(ids(job, id)).toEqual(['A', 'B', 'C']);
    expect(rowOfWall(job, 'A').closed).toBe(false);
  });
  it('of a room all round begins with the wall listed first', () => {
    const closed = room(
      ['A', 'B', 'C', 'D'].map((id, i) => wallOf(id, 2000, inside(['B', 'C', 'D', 'A'][i]!))),
    );
    for (const id of ['A', 'C', 'D']) expect(ids(closed, id)).toEqual(['A', 'B', 'C', 'D']);
    expect(rowOfWall(closed, 'D').closed).toBe(true);
  });
  it('is the wall alone without corners, and empty without the wall', () => {
    expect(ids(room([wallOf('A', 1000), wallOf('B', 1000)]), 'B')).toEqual(['B']);
    expect(ids(job, 'X')).toEqual([]);
  });
  it('ends where corners go round without the wall, which no sound job has', () => {
    const odd = room([
      wallOf('A', 1000, inside('B')),
      wallOf('B', 1000, inside('C')),
      wallOf('C', 1000, inside('B')),
    ]);
    expect(ids(odd, 'A')).toEqual(['A', 'B', 'C']);
  });
  it('stands among the other rows of its room, in listed order', () => {
    const walls = [
      { ...wallOf('A', 1000, inside('B')), room: 'Press' },
      wallOf('B', 1000),
      { ...wallOf('C', 1000), room: 'Press' },
      { ...wallOf('D', 1000), room: 'Store' },
    ];
    const rows = (id: string) => rowsOfRoom(room(walls), id).map((row) => row.walls.map((wall) => wall.id));
    expect(rows('A')).toEqual([['A', 'B'], ['C']]);
    expect(rows('C')).toEqual([['A', 'B'], ['C']]);
    expect(rows('D')).toEqual([['D']]);
  });
});

describe('corners that cannot be', () => {
  const refused = (job: Job) => checkCorners(job).map(({ text }) => text);
  it('lead to the wall itself, to none, or to an end that is taken', () => {
    expect(refused(room([wallOf('A', 1000, inside('A'))]))[0]).toContain('is the wall itself');
    expect(refused(room([wallOf('A', 1000, inside('X'))]))[0]).toContain('no wall has that id');
    const taken = room([wallOf('A', 1000, inside('C')), wallOf('B', 1000, inside('C')), wallOf('C', 1000)]);
    expect(refused(taken)).toEqual([
      'walls[1].corner.to (wall B) is "C", whose left end walls[0].corner.to has already; two walls cannot meet the same end.',
    ]);
  });
  it('are followed by zones that no corner leads to', () => {
    const runsOn = { wall: 'B', zone: 'Z1', lines: 'continue' as const };
    const zone = (id: string) => ({ ...steel(id, [0, 0, 100, 100]), runsOn });
    const bare = room([wallOf('A', 1000, undefined, [zone('Z1')]), wallOf('B', 1000)]);
    expect(refused(bare)[0]).toContain('the right end of its own wall has no corner');
    const gone = room([wallOf('A', 1000, inside('B'), [zone('Z1')]), wallOf('B', 1000)]);
    expect(refused(gone)[0]).toContain('which wall "B" does not have');
    const twice = room([
      wallOf('A', 1000, inside('B'), [zone('Z1'), zone('Z2')]),
      wallOf('B', 1000, undefined, [steel('Z1', [0, 0, 100, 100])]),
    ]);
    expect(refused(twice)[0]).toContain('to which walls[0].zones[0].runsOn runs on already');
  });
  it('are looked for in alternatives that wait, too, but for what the survey has taken away since', () => {
    const runsOn = { wall: 'B', zone: 'Z1', lines: 'continue' as const };
    const zone = (id: string) => ({ ...steel(id, [0, 0, 100, 100]), runsOn });
    const plain = steel('Z1', [0, 0, 100, 100]);
    const waiting = (walls: Job['walls'], zones: Record<string, Zone[]>) => ({
      ...room(walls),
      alternatives: [{ id: 'V2', name: '', zones }],
    });
    const meeting = [wallOf('A', 1000, inside('B')), wallOf('B', 1000)];
    expect(refused(waiting(meeting, { A: [zone('Z1')], B: [plain] }))).toEqual([]);
    const [gone] = refused(waiting(meeting, { A: [zone('Z1')] }));
    expect(gone).toContain('names zone "Z1", which wall "B" does not have');
    expect(gone).toContain('alternatives[0]');
    expect(refused(waiting(meeting, { A: [zone('Z1'), zone('Z2')], B: [plain] }))[0]).toContain(
      'runs on already',
    );
    const apart = [wallOf('A', 1000), wallOf('B', 1000)];
    expect(refused(waiting(apart, { A: [zone('Z1')], B: [plain] }))).toEqual([]);
  });
  it('are refused by reading, in one sentence, with angle and rise out of reason', () => {
    const text = (corner: object) =>
      writeJob(room([wallOf('A', 1000), wallOf('B', 1000)])).replace(
        '"outline"',
        `"corner": ${JSON.stringify(corner)}, "outline"`,
      );
    expect(readJob(text({ to: 'B', kind: 'internal' })).findings).toEqual([]);
    for (const wrong of [
      { angle: 0 },
      { angle: 180 },
      { angle: 'x' },
      { rise: 1e9 },
      { kind: 'round' },
      { to: '' },
    ]) {
      const { job, findings } = readJob(text({ to: 'B', kind: 'internal', ...wrong }));
      expect(job).toBeNull();
      expect(findings).toHaveLength(1);
    }
  });
});

describe('a room all round', () => {
  const closedBy = (corners: readonly (readonly ['internal' | 'external', number])[]) =>
    room(
      corners.map(([kind, angle], i) =>
        wallOf(`W${i}`, 2000, { to: `W${(i + 1) % corners.length}`, kind, angle }),
      ),
    );
  it('turns by 360°: the outer angles of a simple polygon (turning tangents, H. Hopf 1935)', () => {
    expect(turnAt({ to: 'B', kind: 'internal' })).toBe(90);
    expect(turnAt({ to: 'B', kind: 'external', angle: 120 })).toBe(-60);
    expect(codes(closedBy([90, 90, 90, 90].map((angle) => ['internal', angle])))).toEqual([]);
    // L-shaped: five corners turn one way, one the other.
    expect(codes(closedBy([...Array(5).fill(['internal', 90]), ['external', 90]] as never))).toEqual([]);
    expect(
      codes(
        closedBy([
          ['internal', 60],
          ['internal', 60],
          ['internal', 60],
        ]),
      ),
    ).toEqual([]);
    // Round a pier, seen from outside.
    expect(codes(closedBy(Array(4).fill(['external', 90]) as never))).toEqual([]);
  });
  it('is no room where it does not', () => {
    const two = cornerWarnings(
      closedBy([
        ['internal', 90],
        ['internal', 90],
      ]),
    );
    expect(two.map(({ code, text }) => [code, text])).toEqual([
      [
        'room-does-not-close',
        'Walls W0, W1 lead back to the first, but their corners turn by 180° together and not by 360°; check kinds and angles, or take one corner out.',
      ],
    ]);
    expect(codes(closedBy([90, 90, 90].map((angle) => ['internal', angle])))).toEqual([
      'room-does-not-close',
    ]);
  });
});

describe('parts of a zone that do not meet at the corner', () => {
  const runsOn = { wall: 'B', zone: 'Z1', lines: 'continue' as const };
  const job = (
    one = steel('Z1', [1000, 600, 1000, 1200]),
    other = steel('Z1', [0, 600, 800, 1200]),
    changes: Partial<ReturnType<typeof wallOf>> = {},
  ) =>
    room([
      { ...wallOf('A', 2000, inside('B'), [{ ...one, runsOn }]), ...changes },
      wallOf('B', 3000, undefined, [other]),
    ]);
  it('are found by heights, by what is short of the corner, by an opening in it and by their build-ups', () => {
    expect(codes(job())).toEqual([]);
    expect(codes(job(undefined, steel('Z1', [0, 610, 800, 1200])))).toEqual(['zone-heights-differ']);
    expect(codes(job(steel('Z1', [1000, 600, 900, 1200])))).toEqual(['zone-short-of-corner']);
    expect(codes(job(undefined, steel('Z1', [10, 600, 800, 1200])))).toEqual(['zone-short-of-corner']);
    const door = { id: 'D1', kind: 'door', x: 1200, y: 0, width: 790, height: 2000, clearance: 10 };
    expect(codes(job(undefined, undefined, { openings: [door] }))).toEqual(['opening-at-corner']);
    expect(codes(job(undefined, undefined, { openings: [{ ...door, clearance: 9 }] }))).toEqual([]);
    expect(codes(job(undefined, undefined, { openings: [{ ...door, height: 600 }] }))).toEqual([]);
    expect(codes(job(undefined, steel('Z1', [0, 600, 800, 1200], { stagger: 0.5 })))).toEqual([
      'lines-stop-at-corner',
    ]);
    expect(codes(job(undefined, { ...steel('Z1', [0, 600, 800, 1200]), buildUp: 'chalk' }))).toEqual([
      'build-up-changes-at-corner',
    ]);
  });
  it('are in step across a step in the floor', () => {
    const stepped = (y: number) =>
      job(undefined, steel('Z1', [0, y, 800, 1200]), { corner: inside('B', 150) });
    expect(codes(stepped(450))).toEqual([]);
    expect(codes(stepped(600))).toEqual(['zone-heights-differ']);
  });
});
