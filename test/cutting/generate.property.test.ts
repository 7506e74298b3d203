import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '../../core/geometry/polygon';
import { nest, readNestTask, type NestedSheet, type NestTask } from '../../core/cutting/nest';
import type { CuttingTask } from '../../core/cutting/plan';
import { chargesOf } from '../../core/cutting/pool/charge';
import { generate } from '../../core/cutting/pool/generate';
import { PricedSheets } from '../../core/cutting/pool/priced-sheets';
import { seededRandom } from '../../core/cutting/random';
import { writePlan } from '../../core/cutting/write-plan';
import { faultsOf } from './verify-plan';

/** Whole units of 100 hundredths, so that sides make few sums. */
const tasks = fc.record({
  stock: fc.array(fc.tuple(fc.integer({ min: 8, max: 14 }), fc.integer({ min: 8, max: 14 })), {
    minLength: 1,
    maxLength: 2,
  }),
  sides: fc.array(fc.tuple(fc.integer({ min: 2, max: 8 }), fc.integer({ min: 2, max: 8 })), {
    minLength: 6,
    maxLength: 18,
  }),
  kerf: fc.constantFrom(0, 100),
});

function taskOf({ stock, sides, kerf }: typeof tasks extends fc.Arbitrary<infer T> ? T : never): CuttingTask {
  const ids = stock.map((_, i) => `S${i}`);
  return {
    panels: sides.map(([w, h], i) => ({
      mark: `P${i}`,
      stock: ids,
      outline: rectangle(0, 0, 100 * w, 100 * h),
    })),
    stock: stock.map(([w, h], i) => ({
      id: ids[i]!,
      width: 100 * w,
      height: 100 * h,
      price: w * h,
      hasFace: false,
    })),
    rack: [],
    method: 'edge-to-edge',
    kerf,
    leastOffcut: [100, 100],
  };
}

const chargeOf = ({ task }: NestTask, sheets: readonly NestedSheet[]) =>
  sheets.reduce((sum, { stock, rack }) => sum + chargesOf(task)(stock, rack), 0);
const faults = (nestTask: NestTask, sheets: readonly NestedSheet[]) =>
  faultsOf(nestTask.task, writePlan(nestTask, sheets, { newSheets: 0, cost: 0 }, new WeakMap()));

describe('stock sheets made by prices', () => {
  test('hold only panels there are, can be cut edge to edge, and are worth what is said', () => {
    let made = 0;
    fc.assert(
      fc.property(tasks, fc.integer(), (drawn, seed) => {
        const task = taskOf(drawn);
        const nestTask = readNestTask(task);
        const { kinds } = nestTask;
        const priced = PricedSheets.of(nestTask)!;
        const random = seededRandom(seed);
        const prices = kinds.map(({ area }) => (area / 1e6) * (0.5 + random()));
        const items = kinds.flatMap(({ members }, kind) => members.map(() => kind));
        for (const _ of priced.fill(items, prices));
        const costs = task.stock.map(({ price }) => price);
        const sheets = priced.sheets(costs, 0);
        const rates = sheets.map(
          (sheet) => sheet.kinds.reduce((sum, kind) => sum + prices[kind]!, 0) / costs[sheet.stock]!,
        );
        rates.forEach((rate) => expect(rate).toBeLessThanOrEqual(priced.most(costs) + 1e-9));
        expect([...rates].sort((a, b) => b - a)).toEqual(rates);
        for (const { stock, places } of sheets) {
          made++;
          // A delivery of just these panels: the plan of the one stock sheet must be sound.
          const panels = new Map(kinds.map(({ members }, kind) => [kind, [...members]]));
          const own = places.map(({ kind }) => task.panels[panels.get(kind)!.pop()!]!);
          const part = readNestTask({ ...task, panels: own });
          const kindOf = (kind: number) =>
            part.kinds.findIndex(
              ({ longSide, shortSide }) =>
                longSide === kinds[kind]!.longSide && shortSide === kinds[kind]!.shortSide,
            );
          const moved = places.map((place) => {
            const { width } = kinds[place.kind]!.poses[place.pose]!;
            const kind = kindOf(place.kind);
            return {
              ...place,
              kind,
              pose: part.kinds[kind]!.poses.findIndex((pose) => pose.width === width),
            };
          });
          expect(faults(part, [{ stock, rack: -1, filled: { places: moved, spaces: [], area: 0 } }])).toEqual(
            [],
          );
        }
      }),
      { numRuns: 40, seed: 3 },
    );
    expect(made).toBeGreaterThan(100);
  });

  test('of two panels that fill a stock sheet together, hold both, though either is worth more twice', () => {
    const task = taskOf({
      stock: [[10, 10]],
      sides: [
        [5, 10],
        [4, 10],
        [3, 3],
      ],
      kerf: 0,
    });
    const nestTask = readNestTask(task);
    const priced = PricedSheets.of(nestTask)!;
    const prices = nestTask.kinds.map(({ longSide, shortSide }) => (longSide * shortSide) / 1e6);
    for (const _ of priced.fill([0, 1, 2], prices));
    // 5 × 10 and 4 × 10; the 3 × 3 fits in neither rest.
    expect(priced.most([1])).toBeCloseTo(0.9, 9);
  });
});

describe('plans of sheets made by prices', () => {
  test('hold every panel once, soundly, and each costs less than the one before', () => {
    let better = 0;
    fc.assert(
      fc.property(tasks, fc.integer(), (drawn, seed) => {
        const nestTask = readNestTask(taskOf(drawn));
        const random = seededRandom(seed);
        // A poor plan to begin with: the panels as they come.
        const rule = {
          order: nestTask.kinds.map((_, kind) => kind).reverse(),
          score: 'contact' as const,
          leaning: nestTask.task.stock.map(() => 1),
        };
        let best: readonly NestedSheet[] = nest(
          nestTask,
          rule,
          nestTask.kinds.map(({ members }) => members.length),
          [],
        );
        let steps = 0;
        for (const found of generate(nestTask, best, random)) {
          if (found) {
            expect(chargeOf(nestTask, found)).toBeLessThan(chargeOf(nestTask, best));
            expect(faults(nestTask, found)).toEqual([]);
            best = found;
            better++;
          }
          if (++steps > 60) break;
        }
      }),
      { numRuns: 40, seed: 7 },
    );
    expect(better).toBeGreaterThan(5);
  });

  test('are not looked for where stock is scarce, or something lies on the rack', () => {
    const task = taskOf({ stock: [[10, 10]], sides: [[5, 10]], kerf: 0 });
    const scarce = { ...task, stock: [{ ...task.stock[0]!, available: 3 }] };
    expect(PricedSheets.of(readNestTask(scarce))).toBe(undefined);
    expect(PricedSheets.of(readNestTask(task))).not.toBe(undefined);
  });
});
