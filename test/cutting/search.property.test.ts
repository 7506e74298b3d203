import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CuttingTask, DeliveryPlan } from '../../core/cutting/plan';
import { searchCutting } from '../../core/cutting/search';
import { randomTasks } from './random-tasks';
import { faultsOf } from './verify-plan';

const methods = ['edge-to-edge', 'free'] as const;

describe.each(methods)('a plan cut %s', (method) => {
  test('places every panel once, soundly, and never undercuts its bound', () => {
    fc.assert(
      fc.property(randomTasks(method), fc.integer(), (task, seed) => {
        for (const plan of plansOf(task, seed, 5)) expect(faultsOf(task, plan)).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  test('is the same for the same seed, and more steps never make it worse', () => {
    fc.assert(
      fc.property(randomTasks(method), fc.integer(), (task, seed) => {
        const plans = plansOf(task, seed, 12);
        expect(plansOf(task, seed, 12)).toEqual(plans);
        plans.slice(1).forEach((plan, i) => {
          const before = plans[i]!;
          const isWorse =
            plan.cost > before.cost || (plan.cost === before.cost && plan.newSheets > before.newSheets);
          expect(isWorse).toBe(false);
        });
      }),
      { numRuns: 40 },
    );
  });
});

/** The different plans of so many steps. */
function plansOf(task: CuttingTask, seed: number, steps: number): DeliveryPlan[] {
  const plans: DeliveryPlan[] = [];
  for (const plan of searchCutting(task, seed)) {
    if (plan !== plans[plans.length - 1]) plans.push(plan);
    if (--steps === 0) break;
  }
  return plans;
}
