import { describe, expect, it } from 'vitest';
import type { CuttingSearch, DeliveryPlan } from '../../core/cutting/plan';
import type { Delivery } from '../../core/run/deliveries';
import { planDeliveries } from '../../core/run/plan-deliveries';

const task = {
  panels: [],
  stock: [],
  method: 'free' as const,
  kerf: 0,
  leastOffcut: [0, 0] as const,
};
const deliveries: Delivery[] = [
  { name: '1', task },
  { name: '2', task },
];
const rack = [{ id: 'R1', stock: 'S1', width: 100, height: 100 }];

function planOf(newSheets: number, fromRack: string | null): DeliveryPlan {
  const planned = { stock: 'S1', fromRack, width: 100, height: 100, placements: [], offcuts: [], cuts: [] };
  return { sheets: [planned], newSheets, lowerBound: 0, cost: newSheets, costLowerBound: 0 };
}

/** Without the rack piece a delivery stays at two; with it the third step finds a plan of one. */
const search: CuttingSearch = function* ({ rack: left }) {
  const plain = planOf(2, null);
  yield plain;
  yield plain;
  for (const better = planOf(1, left[0]?.id ?? null); ;) yield left.length > 0 ? better : plain;
};

function follow(steps: number) {
  const seen: (readonly number[])[] = [];
  const work = planDeliveries(deliveries, rack, search, () => steps);
  for (;;) {
    const { value, done } = work.next();
    if (value) seen.push(value.map((plan) => plan.newSheets));
    if (done) return { seen, last: value };
  }
}

describe('planDeliveries', () => {
  it('gives every delivery its first plan before any gets better', () => {
    expect(follow(3).seen[0]).toEqual([2, 2]);
  });

  it('uses a rack piece once, for the delivery listed first', () => {
    const { last } = follow(3);
    expect(last.map((plan) => plan.newSheets)).toEqual([1, 2]);
    expect(last.flatMap((plan) => plan.sheets.map((planned) => planned.fromRack))).toEqual(['R1', null]);
  });

  it('stops at the budget of steps', () => {
    expect(follow(2).last.map((plan) => plan.newSheets)).toEqual([2, 2]);
  });
});
