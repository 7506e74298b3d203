import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { improveByGoal } from '../../core/cutting/goal/improve';
import { improveInParts } from '../../core/cutting/goal/improve-parts';
import { readNestTask, type NestedSheet, type NestTask } from '../../core/cutting/nest';
import { nestWithRack } from '../../core/cutting/nest-with-rack';
import { orderedRules } from '../../core/cutting/rules';
import type { CuttingTask } from '../../core/cutting/plan';
import { seededRandom } from '../../core/cutting/random';
import { writePlan } from '../../core/cutting/write-plan';
import { rectangle } from '../../core/geometry/polygon';
import { randomTasks } from './random-tasks';
import { faultsOf } from './verify-plan';

type Engine = typeof improveByGoal;

/** The plans that so many steps find, after the one that they start from. */
function plansOf(engine: Engine, nestTask: NestTask, seed: number, steps: number) {
  // The worst rule leaves most to improve.
  const start = oneSheetEach(nestTask);
  const plans: (readonly NestedSheet[])[] = [start];
  const search = engine(nestTask, start, seededRandom(seed));
  for (let step = 0; step < steps; step++) {
    const next = search.next();
    if (next.done) break;
    if (next.value) plans.push(next.value);
  }
  return plans;
}

/** Panels nested kind by kind, each kind on stock sheets of its own. */
function oneSheetEach(nestTask: NestTask): NestedSheet[] {
  const [rule] = orderedRules(nestTask);
  return nestTask.kinds.flatMap((kind, number) => {
    const order = [number];
    const alone = nestTask.kinds.map((_, other) => (other === number ? kind : { ...kind, members: [] }));
    return nestWithRack({ task: { ...nestTask.task, rack: [] }, kinds: alone }, { ...rule!, order });
  });
}

const spend = ({ task }: NestTask, sheets: readonly NestedSheet[]) => {
  const bought = sheets.filter(({ rack }) => rack < 0);
  return bought.reduce((sum, { stock }) => sum + task.stock[stock]!.price, 0) * 1000 + bought.length;
};

const faults = (nestTask: NestTask, sheets: readonly NestedSheet[]) =>
  faultsOf(nestTask.task, writePlan(nestTask, sheets, { newSheets: 0, cost: 0 }, new WeakMap()));

describe.each(['edge-to-edge', 'free'] as const)('plans found for a goal, cut %s', (method) => {
  test('place every panel once, soundly, with kerf, notches, rack and formats mixed, and never cost more', () => {
    let found = 0;
    fc.assert(
      fc.property(randomTasks(method), fc.integer(), (task, seed) => {
        const nestTask = readNestTask(task);
        const plans = plansOf(improveByGoal, nestTask, seed, 3);
        plans.slice(1).forEach((plan, i) => {
          expect(faults(nestTask, plan)).toEqual([]);
          expect(spend(nestTask, plan)).toBeLessThanOrEqual(spend(nestTask, plans[i]!));
          found++;
        });
      }),
      { numRuns: 40 },
    );
    expect(found).toBeGreaterThan(20);
  });

  test('are the same for the same seed', () => {
    fc.assert(
      fc.property(randomTasks(method), fc.integer(), (task, seed) => {
        const nestTask = readNestTask(task);
        expect(plansOf(improveByGoal, nestTask, seed, 3)).toEqual(plansOf(improveByGoal, nestTask, seed, 3));
      }),
      { numRuns: 25 },
    );
  });
});

const strips = (count: number, available?: number): CuttingTask => ({
  panels: Array.from({ length: count }, (_, i) => ({
    mark: `P${i}`,
    stock: ['S', 'T'],
    outline: rectangle(0, 0, 20000 + 1000 * (i % 7), 30000 + 500 * (i % 11)),
  })),
  stock: [
    { id: 'S', width: 50000, height: 50000, price: 100, hasFace: false, ...(available && { available }) },
    { id: 'T', width: 50000, height: 50000, price: 150, hasFace: false },
  ],
  rack: [],
  method: 'edge-to-edge',
  kerf: 200,
  leastOffcut: [10000, 10000],
});

// From a plan of the dearer stock sheets alone, and from one of more of the cheaper than there are.
test.each([1, 0])('no more stock sheets are used than there are, starting from format %i', (format) => {
  const nestTask = readNestTask(strips(24, 5));
  const without = readNestTask(strips(24));
  const [rule] = orderedRules(without);
  const start = nestWithRack(without, { ...rule!, leaning: format === 1 ? [10, 1] : [1, 10] });
  expect(start.every(({ stock }) => stock === format)).toBe(true);
  const search = improveByGoal(nestTask, start, seededRandom(1));
  let last: readonly NestedSheet[] = start;
  for (let step = 0; step < 20; step++) last = search.next().value ?? last;
  expect(last.filter(({ stock }) => stock === 0)).toHaveLength(5);
  expect(faults(nestTask, last)).toEqual([]);
});

test('a plan of many panels is improved a part at a time and stays whole', () => {
  const task = strips(1000);
  const nestTask = readNestTask(task);
  const plans = plansOf(improveInParts, nestTask, 3, 200);
  expect(plans.length).toBeGreaterThan(2);
  plans.slice(1).forEach((plan, i) => {
    expect(spend(nestTask, plan)).toBeLessThan(spend(nestTask, plans[i]!));
    expect(plan.reduce((sum, { filled }) => sum + filled.places.length, 0)).toBe(1000);
  });
  expect(faults(nestTask, plans[plans.length - 1]!)).toEqual([]);
});
