import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addWall,
  changeObject,
  copyObject,
  fitObject,
  moveObject,
  removeObject,
  removeWall,
  resizeOutline,
  changeWall,
} from '../../core/job/changes';
import { checkCorners } from '../../core/job/check-corners';
import { keepInStep } from '../../core/job/keep-in-step';
import { changeRunsOn, runRoundCorner } from '../../core/job/run-round-corner';
import type { Job, Zone } from '../../core/job/schema';
import { boxOfVertices, findWall } from '../../core/job/shape';
import { cornerWarnings } from '../../core/job/warn-corners';
import { inside, room, steel, wallOf } from './room-walls';

const walls = [
  wallOf('A', 2000, inside('B'), [steel('Z1', [1100, 600, 700, 1200])]),
  wallOf('B', 3000, inside('C')),
  wallOf('C', 1500),
];
const zoneOf = (job: Job, wall: string, id = 'Z1') =>
  findWall(job, wall)?.zones.find((zone) => zone.id === id);
const box = (job: Job, wall: string) => {
  const { x, y, width, height } = boxOfVertices(zoneOf(job, wall)!.shape);
  return [x, y, width, height];
};
const ref = { kind: 'zone', id: 'Z1' } as const;

function round(job: Job, wallId: string, side: 'left' | 'right' = 'right', length?: number): Job {
  const result = runRoundCorner(job, wallId, 'Z1', side, length);
  if ('fault' in result) throw new Error(result.fault);
  return result.job;
}

describe('running round a corner', () => {
  it('leads the zone on to the corner and on along the next wall, for a length or all of it', () => {
    const job = round(room(walls), 'A', 'right', 800);
    expect(box(job, 'A')).toEqual([1100, 600, 900, 1200]);
    expect(box(job, 'B')).toEqual([0, 600, 800, 1200]);
    expect(zoneOf(job, 'A')!.runsOn).toEqual({ wall: 'B', zone: 'Z1', lines: 'continue' });
    expect(zoneOf(job, 'B')!.layout).toEqual(zoneOf(job, 'A')!.layout);
    expect(box(round(room(walls), 'A'), 'B')).toEqual([0, 600, 3000, 1200]);
    expect(cornerWarnings(job)).toEqual([]);
    expect(checkCorners(job)).toEqual([]);
  });
  it('goes to the left just as well, and counts levels by the step between the floors', () => {
    const stepped = room([
      wallOf('A', 2000, inside('B', 200)),
      wallOf('B', 3000, undefined, [steel('Z1', [500, 600, 700, 1200])]),
    ]);
    const job = round(stepped, 'B', 'left', 900);
    expect(box(job, 'B')).toEqual([0, 600, 1200, 1200]);
    expect(box(job, 'A')).toEqual([1100, 800, 900, 1200]);
    expect(cornerWarnings(job)).toEqual([]);
  });
  it('carries a start that is a point into the other frame', () => {
    const started = changeObject<Zone>(room(walls), 'A', ref, {
      layout: { ...zoneOf(room(walls), 'A')!.layout!, start: { x: 1130, y: 550 } },
    });
    expect(zoneOf(round(started, 'A'), 'B')!.layout!.start).toEqual({ x: -870, y: 550 });
  });
  it('takes a zone that stands there already for its other part', () => {
    const job = round(
      room([walls[0]!, wallOf('B', 3000, undefined, [steel('Q', [0, 600, 400, 1200], { start: 'best' })])]),
      'A',
    );
    expect(findWall(job, 'B')!.zones).toHaveLength(1);
    expect(zoneOf(job, 'B', 'Q')!.layout!.start).toBe('lower-left');
  });
  it('says why it cannot', () => {
    const fault = (job: Job, wallId: string, side: 'left' | 'right') => {
      const result = runRoundCorner(job, wallId, 'Z1', side);
      return 'fault' in result ? result.fault : null;
    };
    expect(fault(room(walls), 'A', 'left')).toContain('meets no other wall');
    expect(fault(round(room(walls), 'A'), 'A', 'right')).toContain('already');
    expect(fault(room(walls), 'X', 'right')).toContain('no zone Z1');
    const pointed = changeObject<Zone>(room(walls), 'A', ref, {
      shape: [
        [0, 0],
        [1000, 500],
        [0, 1000],
      ],
    });
    expect(fault(pointed, 'A', 'right')).toContain('upright edge');
  });
});

describe('what follows at corners', () => {
  const start = round(round(room(walls), 'A'), 'B', 'right', 600);
  const after = (job: Job) => keepInStep(start, job);

  it('is nothing where a change has nothing to do with them', () => {
    const job = changeObject<Zone>(start, 'A', ref, { name: 'New' });
    expect(after(job)).toBe(job);
    expect(after(start)).toBe(start);
  });
  it('is the height of every other part, whichever is moved or resized, a step in the floor with it', () => {
    for (const wall of ['A', 'B', 'C']) {
      const job = after(moveObject(start, wall, ref, 0, 130));
      for (const id of ['A', 'B', 'C'])
        expect(box(job, id).slice(1, 4)).toEqual([730, box(start, id)[2], 1200]);
      const [x, , width] = box(start, wall);
      const taller = after(fitObject(start, wall, ref, { x: x!, y: 400, width: width!, height: 1500 }));
      for (const id of ['A', 'B', 'C']) expect([box(taller, id)[1], box(taller, id)[3]]).toEqual([400, 1500]);
    }
    const stepped = after(changeWall(start, 'B', (wall) => ({ ...wall, corner: inside('C', 90) })));
    expect(box(stepped, 'C')[1]).toBe(510);
    expect(box(stepped, 'B')[1]).toBe(600);
  });
  it('is that parts still reach ends that were moved', () => {
    const job = after(resizeOutline(start, 'B', 2500, 2600));
    expect(box(job, 'B')).toEqual([0, 600, 2500, 1200]);
    expect(cornerWarnings(job)).toEqual([]);
  });
  it('leaves parts that were set apart by hand where they are', () => {
    const apart = moveObject(start, 'C', ref, 0, 50);
    const job = keepInStep(apart, moveObject(apart, 'B', ref, 0, 10));
    expect(box(job, 'C')[1]).toBe(650);
    expect(box(job, 'A')[1]).toBe(610);
  });
  it('is build-up and layout, but only what makes the lines and only where they continue', () => {
    const layout = { ...zoneOf(start, 'B')!.layout!, stagger: 0.5, startEachPart: true };
    const job = after(changeObject<Zone>(start, 'B', ref, { layout }));
    expect(zoneOf(job, 'A')!.layout!.stagger).toBe(0.5);
    expect(zoneOf(job, 'C')!.layout!.stagger).toBe(0.5);
    expect(zoneOf(job, 'A')!.layout).not.toHaveProperty('startEachPart');
    const anew = keepInStep(start, changeRunsOn(start, 'A', 'Z1', { lines: 'anew' }));
    const changed = keepInStep(
      anew,
      changeObject<Zone>(anew, 'A', ref, { layout: { ...zoneOf(anew, 'A')!.layout!, jointGap: 2 } }),
    );
    expect(zoneOf(changed, 'B')!.layout!.jointGap).toBe(0);
    const again = keepInStep(changed, changeRunsOn(changed, 'A', 'Z1', { lines: 'continue' }));
    expect(['A', 'B', 'C'].map((id) => zoneOf(again, id)!.layout!.jointGap)).toEqual([2, 2, 2]);
    const { layout: _, ...bare } = { ...zoneOf(start, 'C')!, buildUp: 'chalk' };
    const chalk = after(changeWall(start, 'C', (wall) => ({ ...wall, zones: [bare as Zone] })));
    expect(['A', 'B', 'C'].map((id) => [zoneOf(chalk, id)!.buildUp, zoneOf(chalk, id)!.layout])).toEqual(
      Array(3).fill(['chalk', undefined]),
    );
  });
  it('is the layers, from whichever part they were chosen, but not of a part that has others', () => {
    for (const wall of ['A', 'B', 'C']) {
      const own = after(changeObject<Zone>(start, wall, ref, { layers: 'B1' }));
      expect(['A', 'B', 'C'].map((id) => zoneOf(own, id)!.layers)).toEqual(['B1', 'B1', 'B1']);
      const ready = keepInStep(own, changeObject<Zone>(own, wall, ref, { layers: undefined }));
      for (const id of ['A', 'B', 'C']) expect(zoneOf(ready, id)).not.toHaveProperty('layers');
    }
    const apart = changeObject<Zone>(start, 'C', ref, { layers: 'B9' });
    const job = keepInStep(apart, changeObject<Zone>(apart, 'A', ref, { layers: 'B1' }));
    expect(['A', 'B', 'C'].map((id) => zoneOf(job, id)!.layers)).toEqual(['B1', 'B1', 'B9']);
    const { layout: _, ...bare } = { ...zoneOf(apart, 'A')!, buildUp: 'chalk' };
    const chalk = keepInStep(
      apart,
      changeWall(apart, 'A', (wall) => ({ ...wall, zones: [bare as Zone] })),
    );
    expect(zoneOf(chalk, 'C')).not.toHaveProperty('layers');
  });
  it('is the end of an edge that goes on round the corner, and of no other', () => {
    const feather = { edge: 3, end: 'feather', width: 450 } as const;
    const job = after(changeObject<Zone>(start, 'A', ref, { edges: [feather, { edge: 4, end: 'trim' }] }));
    expect(zoneOf(job, 'B')!.edges).toEqual([feather]);
    expect(zoneOf(job, 'C')!.edges).toEqual([feather]);
    const back = keepInStep(
      job,
      changeObject<Zone>(job, 'C', ref, { edges: [{ edge: 1, end: 'stop-bead' }, feather] }),
    );
    expect(zoneOf(back, 'A')!.edges).toEqual([
      { edge: 1, end: 'stop-bead' },
      feather,
      { edge: 4, end: 'trim' },
    ]);
    const none = keepInStep(back, changeObject<Zone>(back, 'B', ref, { edges: undefined }));
    expect(zoneOf(none, 'A')!.edges).toEqual([{ edge: 4, end: 'trim' }]);
    expect(zoneOf(none, 'C')).not.toHaveProperty('edges');
  });
  it('comes with the layers and ends of edges that the zone has when it is led round the corner', () => {
    const edges = [
      { edge: 2, end: 'trim' as const },
      { edge: 3, end: 'stop-bead' as const },
    ];
    const job = round(changeObject<Zone>(room(walls), 'A', ref, { edges, layers: 'B1' }), 'A');
    expect(zoneOf(job, 'B')!.layers).toBe('B1');
    expect(zoneOf(job, 'B')!.edges).toEqual([edges[1]]);
  });
  it('is that runs and corners end where a part or a wall is gone', () => {
    const without = after(removeObject(start, 'B', ref));
    expect(zoneOf(without, 'A')).not.toHaveProperty('runsOn');
    const down = after(removeWall(start, 'B'));
    expect(findWall(down, 'A')).not.toHaveProperty('corner');
    expect(zoneOf(down, 'A')).not.toHaveProperty('runsOn');
    expect(checkCorners(down)).toEqual([]);
  });
  it('is that copies of walls and zones stand by themselves', () => {
    const copied = after(copyObject(start, 'A', ref, 0, -300));
    expect(findWall(copied, 'A')!.zones.map((zone) => Boolean(zone.runsOn))).toEqual([true, false]);
    const wall = after(addWall(start, { ...findWall(start, 'A')!, id: 'D' }));
    expect(findWall(wall, 'D')).not.toHaveProperty('corner');
    expect(findWall(wall, 'A')!.corner!.to).toBe('B');
    expect(checkCorners(wall)).toEqual([]);
  });
  it('leaves every job sound, whatever is done to it', () => {
    const step = fc.record({
      what: fc.constantFrom('move', 'zone', 'wall', 'copy', 'corner', 'round', 'size', 'anew'),
      wall: fc.constantFrom('A', 'B', 'C'),
      by: fc.integer({ min: -300, max: 300 }),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        let job = start;
        for (const { what, wall, by } of steps) job = keepInStep(job, done(job, what, wall, by));
        expect(checkCorners(job)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });
});

function done(job: Job, what: string, wallId: string, by: number): Job {
  const wall = findWall(job, wallId);
  if (!wall) return job;
  const first = wall.zones[0];
  const own = { kind: 'zone', id: first?.id ?? '' } as const;
  const { width } = boxOfVertices(wall.outline);
  if (what === 'move') return moveObject(job, wallId, own, by, by);
  if (what === 'zone') return removeObject(job, wallId, own);
  if (what === 'wall') return by > 200 ? removeWall(job, wallId) : job;
  if (what === 'copy')
    return by > 0 ? copyObject(job, wallId, own, by, 0) : addWall(job, { ...wall, id: `${wallId}${by}` });
  if (what === 'corner')
    return changeWall(job, wallId, (found) => ({
      ...found,
      corner: inside(['A', 'B', 'C'][Math.abs(by) % 3]!, by),
    }));
  if (what === 'size') return resizeOutline(job, wallId, width + by, 2600);
  if (what === 'anew') return changeRunsOn(job, wallId, own.id, { lines: 'anew' });
  const result = runRoundCorner(job, wallId, own.id, by > 0 ? 'right' : 'left', Math.abs(by) + 1);
  return 'job' in result ? result.job : job;
}
