import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '../../core/geometry/polygon';
import { nest, readNestTask, type NestedSheet, type NestTask } from '../../core/cutting/nest';
import type { CuttingTask } from '../../core/cutting/plan';
import { createPool } from '../../core/cutting/pool/sheet-pool';
import { chargesOf } from '../../core/cutting/pool/charge';
import { recombine } from '../../core/cutting/pool/recombine';
import { seededRandom } from '../../core/cutting/random';
import { disturbedRule } from '../../core/cutting/rules';
import { writePlan } from '../../core/cutting/write-plan';
import { randomTasks } from './random-tasks';
import { faultsOf } from './verify-plan';

const faults = (nestTask: NestTask, sheets: readonly NestedSheet[]) =>
  faultsOf(nestTask.task, writePlan(nestTask, sheets, { newSheets: 0, cost: 0 }, new WeakMap()));

const chargeOf = ({ task }: NestTask, sheets: readonly NestedSheet[]) =>
  sheets.reduce((sum, { stock, rack }) => sum + chargesOf(task)(stock, rack), 0);

describe.each(['edge-to-edge', 'free'] as const)('plans put together from the pool, cut %s', (method) => {
  test('hold every panel once, soundly, and each costs less than the one before', () => {
    let better = 0;
    fc.assert(
      fc.property(randomTasks(method), fc.integer(), (task, seed) => {
        const nestTask = readNestTask(task);
        const random = seededRandom(seed);
        const pool = createPool(nestTask);
        const everyKind = nestTask.kinds.map((_, kind) => kind);
        const plans = Array.from({ length: 12 }, () =>
          nest(
            nestTask,
            disturbedRule(nestTask, everyKind, random),
            nestTask.kinds.map(({ members }) => members.length),
            random() < 0.5 ? [] : task.rack.map((_, piece) => piece),
          ),
        );
        plans.forEach(pool.add);
        let best: readonly NestedSheet[] = plans.reduce((a, b) =>
          chargeOf(nestTask, b) > chargeOf(nestTask, a) ? b : a,
        );
        let steps = 0;
        for (const found of recombine(pool, best, random)) {
          if (found) {
            expect(chargeOf(nestTask, found)).toBeLessThan(chargeOf(nestTask, best));
            expect(faults(nestTask, found)).toEqual([]);
            best = found;
            better++;
          }
          if (++steps > 2) break;
        }
      }),
      { numRuns: 25, seed: 5 },
    );
    expect(better).toBeGreaterThan(10);
  });
});

describe('recombining', () => {
  const task = (available?: number): CuttingTask => ({
    panels: Array.from({ length: 8 }, (_, i) => ({
      mark: `P${i}`,
      stock: ['S'],
      outline: rectangle(0, 0, 20000 + 1000 * i, 30000),
    })),
    stock: [
      { id: 'S', width: 50000, height: 60000, price: 100, hasFace: false, ...(available && { available }) },
    ],
    rack: [],
    method: 'free',
    kerf: 0,
    leastOffcut: [10000, 10000],
  });
  /** Panels i and 7 − i side by side are 47 wide: four above one another in pairs make a stock sheet. */
  const sheetOf = ({ kinds }: NestTask, numbers: readonly number[]): NestedSheet => {
    const kindOf = (panel: number) => kinds.findIndex(({ members }) => members.includes(panel));
    const places = numbers.map((panel, i) => {
      const kind = kindOf(panel);
      const pose = kinds[kind]!.poses.findIndex(({ height }) => height === 30000);
      const left = i % 2 === 0 ? 0 : 20000 + 1000 * numbers[i - 1]!;
      return { kind, pose, x: left, y: i < 2 ? 0 : 30000, space: 0 };
    });
    const area = places.reduce((sum, { kind }) => sum + kinds[kind]!.area, 0);
    return { stock: 0, rack: -1, filled: { places, spaces: [], area } };
  };
  const firstFound = (available?: number) => {
    const nestTask = readNestTask(task(available));
    const plan = (...sheets: number[][]) => sheets.map((numbers) => sheetOf(nestTask, numbers));
    const a = plan([0, 7, 1, 6], [2, 5], [3, 4]);
    const b = plan([2, 5, 3, 4], [0, 7], [1, 6]);
    const pool = createPool(nestTask);
    pool.add(a);
    pool.add(b);
    for (const found of recombine(pool, a, seededRandom(1))) if (found) return found;
    return null;
  };

  test('takes the full stock sheet of either of two plans', () => {
    expect(firstFound()).toHaveLength(2);
  });

  test('buys no more stock sheets than there are', () => {
    expect(firstFound(1)).toBe(null);
  });

  test('a pool forgets the emptiest sheets when it is full', () => {
    const nestTask = readNestTask(task());
    const pool = createPool(nestTask, 4);
    pool.add([[0], [1], [0, 7, 1, 6], [2, 5, 3, 4], [2, 5]].map((numbers) => sheetOf(nestTask, numbers)));
    expect(pool.sheets.map(({ kinds }) => kinds.length)).toEqual([4, 4, 2]);
  });
});
