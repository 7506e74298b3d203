import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { proveOrImprove, type Certainty } from '../../core/cutting/exact/prove-or-improve';
import { boundsOf } from '../../core/cutting/lower-bound';
import { nest, readNestTask, type NestTask } from '../../core/cutting/nest';
import type { CuttingTask } from '../../core/cutting/plan';
import { orderedRules } from '../../core/cutting/rules';
import { writePlan } from '../../core/cutting/write-plan';
import { rectangle } from '../../core/geometry/polygon';
import { canBeCut } from './exhaustive';
import { faultsOf } from './verify-plan';

const unit = 1000;
const side = fc.integer({ min: 1, max: 5 });
const sheetSide = fc.integer({ min: 3, max: 6 });

interface Tiny {
  readonly pieces: readonly (readonly [number, number])[];
  readonly sheets: readonly (readonly [width: number, height: number, price: number])[];
  readonly rack: readonly (readonly [number, number])[];
  readonly kerf: number;
}

const tiny: fc.Arbitrary<Tiny> = fc.record({
  pieces: fc.array(fc.tuple(side, side), { minLength: 1, maxLength: 7 }),
  sheets: fc.array(fc.tuple(sheetSide, sheetSide, fc.integer({ min: 0, max: 9 })), {
    minLength: 1,
    maxLength: 2,
  }),
  rack: fc.array(fc.tuple(side, side), { maxLength: 1 }),
  kerf: fc.constantFrom(0, 0, 1),
});

function taskOf({ pieces, sheets, rack, kerf }: Tiny): CuttingTask {
  const stock = sheets.map((_, i) => `S${i}`);
  const isInside = ([a, b]: readonly [number, number]) =>
    sheets.some(([w, h]) => (a <= w && b <= h) || (b <= w && a <= h));
  return {
    panels: pieces
      .filter(isInside)
      .map(([w, h], i) => ({ mark: `P${i}`, stock, outline: rectangle(0, 0, w * unit, h * unit) })),
    stock: sheets.map(([w, h, price], i) => ({
      id: `S${i}`,
      width: w * unit,
      height: h * unit,
      price,
      hasFace: false,
    })),
    rack: rack.map(([w, h], i) => ({ id: `R${i}`, stock: 'S0', width: w * unit, height: h * unit })),
    method: 'edge-to-edge',
    kerf: kerf * unit,
    leastOffcut: [unit, unit],
  };
}

function firstPlan(nestTask: NestTask) {
  const counts = nestTask.kinds.map(({ members }) => members.length);
  return nest(nestTask, orderedRules(nestTask)[1]!, counts, []);
}

function certaintyOf(nestTask: NestTask): Certainty | undefined {
  let last: Certainty | undefined;
  for (const step of proveOrImprove(nestTask, firstPlan(nestTask))) last = step ?? last;
  return last;
}

describe('every plan of a small task, edge to edge', () => {
  test('the best is sound and meets the bounds, which no other bound exceeds', () => {
    let better = 0;
    fc.assert(
      fc.property(tiny, (one) => {
        const task = taskOf(one);
        if (task.panels.length === 0) return;
        const nestTask = readNestTask(task);
        const { sheets, bounds } = certaintyOf(nestTask)!;
        const plan = writePlan(nestTask, sheets ?? firstPlan(nestTask), bounds, new WeakMap());
        expect(faultsOf(task, plan)).toEqual([]);
        expect(plan.cost).toBe(bounds.cost);
        const quick = boundsOf(task, nestTask.kinds);
        expect(quick.newSheets).toBeLessThanOrEqual(bounds.newSheets);
        expect(quick.cost).toBeLessThanOrEqual(bounds.cost);
        if (sheets) better++;
      }),
      { numRuns: 300, seed: 7 },
    );
    expect(better).toBeGreaterThan(20);
  });

  // Three rectangles on one sheet can always be parted edge to edge, so that any cutting at all does no better.
  test('agrees with exhaustive search on up to three panels', () => {
    fc.assert(
      fc.property(tiny, (one) => {
        const small = { ...one, pieces: one.pieces.slice(0, 3), sheets: one.sheets.slice(0, 1), kerf: 0 };
        const task = taskOf(small);
        if (task.panels.length === 0) return;
        const { newSheets } = certaintyOf(readNestTask(task))!.bounds;
        const [width, height] = small.sheets[0]!;
        const panels = small.pieces
          .filter(([a, b]) => (a <= width && b <= height) || (b <= width && a <= height))
          .map(([w, h]) => ({
            stock: ['S0'],
            squares: Array.from({ length: w * h }, (_, i): [number, number] => [i % w, Math.floor(i / w)]),
          }));
        const rack = small.rack.map(([w, h]) => ({ stock: 'S0', width: w, height: h }));
        const least = [0, 1, 2, 3].find((count) =>
          canBeCut(panels, [
            ...rack,
            ...Array.from({ length: count }, () => ({ stock: 'S0', width, height })),
          ]),
        );
        expect(newSheets).toBe(least);
      }),
      { numRuns: 300, seed: 8 },
    );
  });

  test('four panels round a hole come from one sheet only if cut freely', () => {
    const task = taskOf({
      pieces: [
        [3, 2],
        [3, 2],
        [3, 2],
        [3, 2],
      ],
      sheets: [[5, 5, 4]],
      rack: [],
      kerf: 0,
    });
    expect(certaintyOf(readNestTask(task))!.bounds).toEqual({ newSheets: 2, cost: 8 });
    expect(certaintyOf(readNestTask({ ...task, method: 'free' }))).toBe(undefined);
  });
});
