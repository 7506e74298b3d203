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

describe('stock of which only some can be had', () => {
  const limited = deliveries.map((delivery) => ({
    ...delivery,
    task: {
      ...task,
      stock: [{ id: 'S1', width: 100, height: 100, price: 1, hasFace: false, available: 3 }],
    },
  }));

  it('is shared out: what one delivery buys is gone for those after it', () => {
    const seen: (number | undefined)[] = [];
    const buyTwo: CuttingSearch = function* ({ stock }) {
      seen.push(stock[0]!.available);
      const one = planOf(1, null);
      for (const plan = { ...one, sheets: [...one.sheets, ...one.sheets], newSheets: 2 }; ;) yield plan;
    };
    const work = planDeliveries(limited, rack, buyTwo, () => 2);
    while (!work.next().done);
    expect(seen).toEqual([3, 1]);
  });
});
