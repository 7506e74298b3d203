import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { improveFreely } from '../../core/cutting/free-goal/improve';
import { MaximalSpaces } from '../../core/cutting/free-goal/maximal-spaces';
import { Skyline } from '../../core/cutting/free-goal/skyline';
import { compare } from '../../core/cutting/measure';
import { nest, readNestTask } from '../../core/cutting/nest';
import type { CuttingTask, DeliveryPlan } from '../../core/cutting/plan';
import { seededRandom } from '../../core/cutting/random';
import { disturbedRule } from '../../core/cutting/rules';
import { writePlan } from '../../core/cutting/write-plan';
import { exhaustiveFit, maximalFree } from './free-goal-exhaustive';
import { randomTasks } from './random-tasks';
import { faultsOf } from './verify-plan';

const noBounds = { newSheets: 0, cost: 0 };

describe('plans forced under a limit, cut freely', () => {
  test('are sound, and each is better than the one before', () => {
    fc.assert(
      fc.property(randomTasks('free'), fc.integer(), (task, seed) => {
        const plans = plansOf(task, seed, 4);
        for (const plan of plans) expect(faultsOf(task, plan)).toEqual([]);
        plans.slice(1).forEach((plan, i) => {
          expect(compare(spend(plan), spend(plans[i]!))).toBeLessThan(0);
        });
      }),
      { numRuns: 60 },
    );
  });

  test('are the same for the same seed and number of steps', () => {
    fc.assert(
      fc.property(randomTasks('free'), fc.integer(), (task, seed) => {
        expect(plansOf(task, seed, 3)).toEqual(plansOf(task, seed, 3));
      }),
      { numRuns: 20 },
    );
  });

  test('leave rack pieces and stock of the rest of the plan alone', () => {
    fc.assert(
      fc.property(randomTasks('free'), fc.integer(), (task, seed) => {
        const nestTask = readNestTask(task);
        const whole = startOf(task, seed);
        const half = whole.length >> 1;
        const [outside, part] = [whole.slice(0, half), whole.slice(half)];
        let steps = 5;
        for (const better of improveFreely(nestTask, part, seededRandom(seed), outside)) {
          if (better) {
            const plan = writePlan(nestTask, [...outside, ...better], noBounds, new WeakMap());
            expect(faultsOf(task, plan)).toEqual([]);
          }
          if (--steps === 0) break;
        }
      }),
      { numRuns: 30 },
    );
  });
});

describe('a few rectangles on one stock sheet', () => {
  const side = fc.integer({ min: 1, max: 7 });
  const sets = fc.array(fc.tuple(side, side), { minLength: 1, maxLength: 5 });

  test('fit only where trying every corner of a grid finds them to, and nearly always then', () => {
    let fitting = 0;
    let found = 0;
    fc.assert(
      fc.property(sets, fc.integer({ min: 5, max: 8 }), fc.integer({ min: 5, max: 8 }), (sizes, w, h) => {
        const area = sizes.reduce((sum, [a, b]) => sum + a * b, 0);
        if (area > w * h || area < 0.7 * w * h) return;
        const sorted = [...sizes].sort((a, b) => b[0] * b[1] - a[0] * a[1]);
        const skyline = new Skyline(
          Int32Array.from(sorted, (size) => Math.max(...size)),
          Int32Array.from(sorted, (size) => Math.min(...size)),
        );
        const kinds = Int32Array.from(sorted, (_, i) => i);
        const fits = skyline.fit(kinds, sorted.length, w, h, w * h - area, 100_000);
        const truth = exhaustiveFit(sorted, w, h);
        if (fits) {
          expect(truth).toBe(true);
          expectApart(skyline, sorted, w, h);
        }
        fitting += Number(truth);
        found += Number(fits);
      }),
      { numRuns: 600, seed: 11 },
    );
    expect(fitting).toBeGreaterThan(50);
    expect(found / fitting).toBeGreaterThan(0.98);
  });
});

describe('maximal free rectangles in flat memory', () => {
  test('are those that trying every rectangle of a grid finds', () => {
    const box = fc.tuple(
      fc.nat(9),
      fc.nat(9),
      fc.integer({ min: 1, max: 6 }),
      fc.integer({ min: 1, max: 6 }),
    );
    fc.assert(
      fc.property(fc.array(box, { maxLength: 7 }), (boxes) => {
        const spaces = new MaximalSpaces();
        const taken = new Uint8Array(100);
        spaces.clear(10, 10);
        for (const [x, y, w, h] of boxes) {
          const [right, top] = [Math.min(10, x + w), Math.min(10, y + h)];
          spaces.occupy(x, y, right, top, 1);
          for (let v = y; v < top; v++) taken.fill(1, v * 10 + x, v * 10 + right);
        }
        const own = Array.from({ length: spaces.count }, (_, i) => spaces.at.slice(4 * i, 4 * i + 4).join());
        expect(own.sort()).toEqual(maximalFree(taken, 10, 10));
      }),
      { numRuns: 300 },
    );
  });
});

/** A first plan that leaves room to improve. */
function startOf(task: CuttingTask, seed: number) {
  const nestTask = readNestTask(task);
  const everyKind = nestTask.kinds.map((_, kind) => kind);
  const rule = disturbedRule(nestTask, everyKind, seededRandom(seed));
  const counts = nestTask.kinds.map(({ members }) => members.length);
  const rack = seed % 2 === 0 ? [] : task.rack.map((_, piece) => piece);
  return nest(nestTask, rule, counts, rack);
}

/** The first plan and every better one within so many steps. */
function plansOf(task: CuttingTask, seed: number, steps: number): DeliveryPlan[] {
  const nestTask = readNestTask(task);
  const start = startOf(task, seed);
  const plans = [writePlan(nestTask, start, noBounds, new WeakMap())];
  for (const better of improveFreely(nestTask, start, seededRandom(seed))) {
    if (better) plans.push(writePlan(nestTask, better, noBounds, new WeakMap()));
    if (--steps === 0) break;
  }
  return plans;
}

function spend(plan: DeliveryPlan): number[] {
  return [plan.cost, plan.newSheets, plan.sheets.length];
}

function expectApart(
  { places }: Skyline,
  sizes: readonly (readonly [number, number])[],
  width: number,
  height: number,
): void {
  const taken = new Uint8Array(width * height);
  sizes.forEach((_, i) => {
    const [a, b] = sizes[places.kind[i]!]!;
    const [long, short] = [Math.max(a, b), Math.min(a, b)];
    const [w, h] = places.way[i] === 0 ? [long, short] : [short, long];
    const [x, y] = [places.x[i]!, places.y[i]!];
    expect(x + w <= width && y + h <= height).toBe(true);
    for (let v = y; v < y + h; v++) for (let u = x; u < x + w; u++) taken[v * width + u]!++;
  });
  expect(Math.max(...taken)).toBe(1);
}
