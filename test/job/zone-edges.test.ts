import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyJob, newWall } from '../../core/job/defaults';
import { growZone, inwardReach, zoneEdges, type ZoneGrowth } from '../../core/job/zone-edges';
import type { Job, Vertex, Zone } from '../../core/job/schema';

function jobWith(shape: Vertex[], holes: Vertex[][] = []): Job {
  const zone: Zone = { id: 'Z1', name: '', shape, holes, buildUp: 'steel-panel' };
  return { ...emptyJob(), walls: [{ ...newWall('A', '', 5000, 3000), zones: [zone] }] };
}

function grown(shape: Vertex[], growth: ZoneGrowth, holes: Vertex[][] = []) {
  const job = jobWith(shape, holes);
  const after = growZone(job, 'A', 'Z1', growth);
  return after === job ? null : after.walls[0]!.zones[0]!.shape;
}

const rectangle: Vertex[] = [
  [1000, 500],
  [3000, 500],
  [3000, 1500],
  [1000, 1500],
];

describe('a zone made wider or higher', () => {
  it('has its edges moved outwards by so much, inwards if negative', () => {
    expect(grown(rectangle, { right: -240 })).toEqual([
      [1000, 500],
      [2760, 500],
      [2760, 1500],
      [1000, 1500],
    ]);
    expect(grown(rectangle, { left: 100, top: 20, bottom: -0.5 })).toEqual([
      [900, 500.5],
      [3000, 500.5],
      [3000, 1520],
      [900, 1520],
    ]);
  });
  it('is the same job where nothing is moved, or another zone is meant', () => {
    expect(grown(rectangle, {})).toBeNull();
    const job = jobWith(rectangle);
    expect(growZone(job, 'A', 'Z9', { left: 10 })).toBe(job);
    expect(growZone(job, 'B', 'Z1', { left: 10 })).toBe(job);
  });
  it('keeps the slope that meets the edge', () => {
    // A ceiling that falls by 1 in 2 to the right.
    const sloping: Vertex[] = [
      [0, 0],
      [2000, 0],
      [2000, 1000],
      [0, 2000],
    ];
    expect(grown(sloping, { right: 200 })).toEqual([
      [0, 0],
      [2200, 0],
      [2200, 900],
      [0, 2000],
    ]);
    expect(grown(sloping, { left: -100 })).toEqual([
      [100, 0],
      [2000, 0],
      [2000, 1000],
      [100, 1950],
    ]);
  });
  it('stays as it is where its outermost edge is no straight one, or a curve meets it', () => {
    const arched: Vertex[] = [[0, 0], [2000, 0], [2000, 1000], { arcTo: [0, 1000], via: [1000, 2000] }];
    expect(zoneEdges.map((edge) => inwardReach(jobWith(arched).walls[0]!.zones[0]!, edge))).toEqual([
      null,
      null,
      999,
      null,
    ]);
    expect(grown(arched, { top: 10 })).toBeNull();
    expect(grown(arched, { bottom: 10 })?.[0]).toEqual([0, -10]);
  });
  it('passes neither a corner nor a hole of its own', () => {
    const stepped: Vertex[] = [
      [0, 0],
      [2000, 0],
      [2000, 500],
      [1200, 500],
      [1200, 1000],
      [0, 1000],
    ];
    expect(grown(stepped, { right: -799 })).not.toBeNull();
    expect(grown(stepped, { right: -800 })).toBeNull();
    const hole: Vertex[] = [
      [1200, 800],
      [1300, 800],
      [1300, 900],
      [1200, 900],
    ];
    expect(grown(rectangle, { left: -199 }, [hole])).not.toBeNull();
    expect(grown(rectangle, { left: -200 }, [hole])).toBeNull();
  });
  it('goes back to what it was when moved back', () => {
    const by = fc.integer({ min: -40_000, max: 40_000 }).map((hundredths) => hundredths / 100);
    fc.assert(
      fc.property(fc.record({ left: by, right: by, bottom: by, top: by }), (growth) => {
        const job = jobWith(rectangle);
        const back = Object.fromEntries(zoneEdges.map((edge) => [edge, -growth[edge]])) as ZoneGrowth;
        const there = growZone(job, 'A', 'Z1', growth);
        expect(growZone(there, 'A', 'Z1', back).walls).toEqual(job.walls);
      }),
    );
  });
});
