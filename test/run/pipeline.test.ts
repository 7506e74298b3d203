import { describe, expect, it } from 'vitest';
import { moveObject } from '../../core/job/changes';
import { demoJob } from '../../core/job/demo';
import { workOut, workOutFully } from '../../core/run/pipeline';
import { toResults } from '../../core/run/results';
import { createCache } from '../../core/run/wall-cache';
import type { WorkedOut } from '../../core/worked-out';

const demo = demoJob();

describe('workOut', () => {
  const worked = workOutFully(demo, { steps: 5 });

  it('gives the same results for the same job and steps', () => {
    expect(toResults(workOutFully(demoJob(), { steps: 5 }))).toEqual(toResults(worked));
  });

  it('places every panel exactly once', () => {
    const marks = worked.walls.flatMap(({ zones }) =>
      zones.flatMap(({ layout }) => (layout?.panels ?? []).map((panel) => panel.mark)),
    );
    const placed = worked.cutting.sheets.flatMap(({ placements }) => placements.map(({ mark }) => mark));
    expect(marks.length).toBeGreaterThan(20);
    expect(placed.sort()).toEqual(marks.sort());
    expect(new Set(marks).size).toBe(marks.length);
  });

  it('counts bought stock sheets once per number and never below the bound', () => {
    const { cutting } = worked;
    const bought = cutting.sheets.filter(({ fromRack }) => fromRack === null);
    expect(bought.map(({ id }) => id)).toEqual(bought.map((_, i) => `N${i + 1}`));
    expect(cutting.newSheets).toBe(bought.length);
    expect(cutting.order.reduce((sum, { plan }) => sum + plan, 0)).toBe(bought.length);
    expect(cutting.lowerBound).toBeLessThanOrEqual(cutting.newSheets);
    expect(cutting.costLowerBound).toBeLessThanOrEqual(cutting.cost);
  });

  it('never gets worse from one yielded result to the next', () => {
    const costs = yieldedBy(workOut(demo, { steps: 20 })).map(({ cutting }) => cutting.cost);
    expect(costs.length).toBeGreaterThan(0);
    expect(costs).toEqual([...costs].sort((a, b) => b - a));
  });

  it('keeps walls that nobody touched', () => {
    const cache = createCache();
    const before = workOutFully(demo, { steps: 3, cache });
    const wall = demo.walls[0]!;
    const ref = { kind: 'fitting' as const, id: wall.fittings[0]!.id };
    const after = workOutFully(moveObject(demo, wall.id, ref, 7, 0), { steps: 3, cache });
    expect(after.walls[0]).not.toBe(before.walls[0]);
    expect(after.walls.slice(1).every((other, i) => other === before.walls[i + 1])).toBe(true);
  });

  it('keeps the layout of a zone that a change of its wall does not reach', () => {
    const cache = createCache();
    const before = workOutFully(demo, { steps: 3, cache });
    const ref = { kind: 'fitting' as const, id: 'K1' };
    const moved = moveObject(demo, 'B', ref, 7, 0);
    const layoutsOfB = ({ walls }: WorkedOut) => walls[1]!.zones.map(({ layout }) => layout);
    const after = workOutFully(moved, { steps: 3, cache });
    expect(after.walls[1]).not.toBe(before.walls[1]);
    expect(layoutsOfB(after)[0]).toBe(layoutsOfB(before)[0]);
    expect(toResults(after)).toEqual(toResults(workOutFully(moved, { steps: 3 })));
    // A layout outlives a pass in which its wall as a whole was recalled.
    workOutFully(moved, { steps: 3, cache });
    const again = workOutFully(moveObject(moved, 'B', ref, 7, 0), { steps: 3, cache });
    expect(layoutsOfB(again)[0]).toBe(layoutsOfB(before)[0]);
  });

  it('pauses within the search for a start', () => {
    const pauses = [...workOut(demo, { steps: 3 })].filter((worked) => worked === undefined).length;
    const cached = createCache();
    workOutFully(demo, { steps: 3, cache: cached });
    const fewer = [...workOut(demo, { steps: 3, cache: cached })].filter((worked) => worked === undefined);
    expect(pauses).toBeGreaterThan(fewer.length + demo.walls.length);
  });

  it('works out a job without walls', () => {
    const { cutting, walls } = workOutFully({ ...demo, walls: [] });
    expect({ walls, newSheets: cutting.newSheets, leastPossible: cutting.leastPossible }).toEqual({
      walls: [],
      newSheets: 0,
      leastPossible: true,
    });
  });

  it('keeps the marks of an issued revision where panels did not change', () => {
    const wall = { ...demo.walls[0]!, id: 'X' };
    const one = { ...demo, walls: [wall] };
    const issued = toResults(workOutFully(one, { steps: 3 }));
    const renumbered = JSON.parse(JSON.stringify(issued).replaceAll(/"X-([^"]+)-(\d\d)"/g, '"X-$1-9$2"'));
    const next = { ...one, revisions: [{ id: 'A', date: '2026-01-05', note: '', results: renumbered }] };
    const marks = toResults(workOutFully(next, { steps: 3 })).walls[0]!.zones.flatMap(({ panels }) => panels);
    expect(marks.length).toBeGreaterThan(0);
    expect(marks.every(({ mark }) => /-9\d\d$/.test(mark))).toBe(true);
  });
});

function yieldedBy(work: ReturnType<typeof workOut>): WorkedOut[] {
  return [...work].filter((worked) => worked !== undefined);
}
