import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Polygon } from '../../core/geometry/polygon';
import { readNestTask } from '../../core/cutting/nest';
import type { CuttingTask, DeliveryPlan } from '../../core/cutting/plan';
import { searchCutting } from '../../core/cutting/search';
import { pairedTask } from '../../core/cutting/slanted-pairs';
import { allTurns, turned } from '../../core/cutting/poses';
import { faultsOf } from './verify-plan';

/** Right-angled trapezoid: `left` and `right` high; a triangle if one of them is 0. */
const trapezoid = (width: number, left: number, right: number): Polygon => ({
  outer: [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    ...(right > 0 ? [{ x: width, y: right }] : []),
    ...(left > 0 ? [{ x: 0, y: left }] : []),
  ],
  holes: [],
});

const task = (shapes: readonly Polygon[], more: Partial<CuttingTask> = {}): CuttingTask => ({
  panels: shapes.map((outline, i) => ({ mark: `P${i + 1}`, stock: ['S'], outline })),
  stock: [{ id: 'S', width: 50000, height: 50000, price: 640, hasFace: false }],
  rack: [],
  method: 'edge-to-edge',
  kerf: 0,
  leastOffcut: [10000, 10000],
  ...more,
});

function planOf(t: CuttingTask, steps: number, search = searchCutting(t, 1)): DeliveryPlan {
  let last: DeliveryPlan | undefined;
  for (const plan of search) {
    last = plan;
    if (--steps === 0) break;
  }
  expect(faultsOf(t, last!)).toEqual([]);
  return last!;
}

describe('two panels along one slope come out of one rectangle', () => {
  test('trapezoids as under a sloping ceiling: one stock sheet instead of two, the slanted cut last', () => {
    const plan = planOf(task([trapezoid(50000, 35000, 20000), trapezoid(50000, 30000, 15000)]), 1);
    expect(plan.newSheets).toBe(1);
    const cuts = plan.sheets[0]!.cuts;
    expect(cuts).toHaveLength(1);
    expect(Math.abs(cuts[0]!.to.y - cuts[0]!.from.y)).toBe(15000);
  });

  test('triangles make their rectangle', () => {
    expect(planOf(task([trapezoid(50000, 50000, 0), trapezoid(50000, 0, 50000)]), 1).newSheets).toBe(1);
  });

  test('a kerf is measured across the slope', () => {
    // 3 : 4 : 5. A kerf of 3 mm across a slope of 30 on 40 takes 3.75 mm upright.
    const shapes = [trapezoid(40000, 40000, 10000), trapezoid(40000, 40000, 10000)];
    const high = (height: number) => [{ id: 'S', width: 40000, height, price: 1, hasFace: false }];
    expect(planOf(task(shapes, { kerf: 300, stock: high(50375) }), 1).newSheets).toBe(1);
    expect(planOf(task(shapes, { kerf: 300, stock: high(50374) }), 4).newSheets).toBe(2);
  });

  test('only turned over where the stock has no face', () => {
    // Both fall to the right; one must be turned half round, which no face forbids.
    const alike = [trapezoid(50000, 35000, 20000), trapezoid(50000, 30000, 15000)];
    // One falls to the right, one to the left: only turned over they face each other.
    const mirrored = [trapezoid(50000, 35000, 20000), trapezoid(50000, 15000, 30000)];
    const faced = { stock: [{ id: 'S', width: 50000, height: 50000, price: 640, hasFace: true }] };
    expect(planOf(task(alike, faced), 1).newSheets).toBe(1);
    expect(planOf(task(mirrored), 1).newSheets).toBe(1);
    expect(planOf(task(mirrored, faced), 4).newSheets).toBe(2);
  });

  test('also where slopes differ by rounding', () => {
    const plan = planOf(task([trapezoid(50000, 35001, 20000), trapezoid(50000, 29999, 14999)]), 1);
    expect(plan.newSheets).toBe(1);
  });

  test('never where cuts are free: there they lie along their slope anyhow', () => {
    const t = task([trapezoid(50000, 35000, 20000), trapezoid(50000, 30000, 15000)], { method: 'free' });
    expect(pairedTask(readNestTask(t))).toBeNull();
  });

  test('inside the margins of a stock sheet', () => {
    const trim = { left: 500, right: 500, bottom: 1000, top: 0 };
    const t = task([trapezoid(50000, 35000, 20000), trapezoid(50000, 30000, 15000)]);
    const plan = planOf({ ...t, stock: [{ ...t.stock[0]!, trim }] }, 1);
    expect(plan.newSheets).toBe(1);
    expect(plan.sheets[0]!.cuts).toHaveLength(4);
  });
});

test('every slanted pair lies soundly, whatever the slope, the kerf and the way round', () => {
  const length = fc.integer({ min: 1000, max: 30000 });
  fc.assert(
    fc.property(
      fc.record({
        width: length,
        drop: length,
        foot: fc.tuple(fc.constantFrom(0, 4000, 12345), fc.constantFrom(0, 4000, 9876)),
        off: fc.integer({ min: -1, max: 1 }),
        kerf: fc.constantFrom(0, 100, 330),
        turns: fc.tuple(fc.nat(7), fc.nat(7)),
        hasFace: fc.boolean(),
      }),
      ({ width, drop, foot, off, kerf, turns, hasFace }) => {
        const shapes = [
          trapezoid(width, foot[0] + drop, foot[0]),
          trapezoid(width, foot[1] + drop + off, foot[1]),
        ];
        const t = task(
          shapes.map((shape, i) => turned(shape, allTurns[turns[i]!]!)),
          { kerf, stock: [{ id: 'S', width: 61000, height: 90000, price: 1, hasFace }] },
        );
        planOf(t, 1);
      },
    ),
    { numRuns: 150 },
  );
});
