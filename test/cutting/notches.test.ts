import { describe, expect, test } from 'vitest';
import { rectangle, type Polygon } from '../../core/geometry/polygon';
import type { CuttingMethod, CuttingTask } from '../../core/cutting/plan';
import { searchCutting } from '../../core/cutting/search';
import { faultsOf } from './verify-plan';

const sheet = 50000;
const polygon = (...points: [number, number][]): Polygon => ({
  outer: points.map(([x, y]) => ({ x, y })),
  holes: [],
});
/** Fills its stock sheet but for a notch of 200 × 200 mm at the upper right. */
const notched = polygon([0, 0], [sheet, 0], [sheet, 30000], [30000, 30000], [30000, sheet], [0, sheet]);
const holed: Polygon = {
  outer: rectangle(0, 0, sheet, sheet).outer,
  holes: [[...rectangle(15000, 15000, 20000, 20000).outer].reverse()],
};
const task = (method: CuttingMethod, kerf: number, big: Polygon, small: Polygon): CuttingTask => ({
  panels: [
    { mark: 'big', stock: ['S'], outline: big },
    { mark: 'small', stock: ['S'], outline: small },
  ],
  stock: [{ id: 'S', width: sheet, height: sheet, price: 640, hasFace: false }],
  rack: [],
  method,
  kerf,
  leastOffcut: [10000, 10000],
});

function firstPlan(t: CuttingTask) {
  const plan = searchCutting(t, 1).next().value!;
  expect(faultsOf(t, plan)).toEqual([]);
  return plan;
}

describe.each(['edge-to-edge', 'free'] as const)('cut %s, a small panel comes out of', (method) => {
  test('a notch it just fits', () => {
    const plan = firstPlan(task(method, 0, notched, rectangle(0, 0, 20000, 20000)));
    expect(plan.newSheets).toBe(1);
    expect(plan.lowerBound).toBe(1);
  });

  test('a notch only if the kerf to the notched panel leaves room', () => {
    expect(firstPlan(task(method, 100, notched, rectangle(0, 0, 19900, 19900))).newSheets).toBe(1);
    expect(firstPlan(task(method, 100, notched, rectangle(0, 0, 19901, 19900))).newSheets).toBe(2);
  });

  test('a hole, kerf on all sides', () => {
    expect(firstPlan(task(method, 100, holed, rectangle(0, 0, 19800, 19800))).newSheets).toBe(1);
    expect(firstPlan(task(method, 100, holed, rectangle(0, 0, 19801, 19800))).newSheets).toBe(2);
  });

  test('the triangle beside a slanted edge', () => {
    const slanted = polygon([0, 0], [sheet, 0], [sheet, 10000], [0, sheet]);
    expect(firstPlan(task(method, 0, slanted, rectangle(0, 0, 15000, 15000))).newSheets).toBe(1);
  });
});

test('opening cuts name the panel they open and follow the cuts that bring out its rectangle', () => {
  const plan = firstPlan({
    ...task('edge-to-edge', 0, notched, rectangle(0, 0, 15000, 20000)),
    stock: [{ id: 'S', width: 60000, height: sheet, price: 640, hasFace: false }],
  });
  expect(plan.sheets[0]!.cuts.map(({ opens }) => opens)).toEqual([undefined, 'big', 'big', undefined]);
});

describe('cut free, panels lie in each other', () => {
  test('two L-panels where two of their boxes would not fit', () => {
    const l = polygon([0, 0], [sheet, 0], [sheet, 20000], [20000, 20000], [20000, 40000], [0, 40000]);
    const plan = firstPlan({
      ...task('free', 0, l, l),
      stock: [{ id: 'S', width: 70000, height: sheet + 10000, price: 1, hasFace: true }],
    });
    expect(plan.newSheets).toBe(1);
  });

  test('two slanted panels along their slope', () => {
    const slanted = polygon([0, 0], [40000, 0], [10000, 40000], [0, 40000]);
    const plan = firstPlan({
      ...task('free', 0, slanted, slanted),
      stock: [{ id: 'S', width: 60000, height: 40000, price: 1, hasFace: true }],
    });
    expect(plan.newSheets).toBe(1);
  });
});
