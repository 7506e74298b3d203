import { expect, test } from 'vitest';
import { rectangle } from '../../core/geometry/polygon';
import type { CuttingTask } from '../../core/cutting/plan';
import { searchCutting } from '../../core/cutting/search';
import { faultsOf } from './verify-plan';

/*
 * A stock sheet 625 × 1250 cut without waste into rows 514, 414 and 322 mm high, each row into panels: one plan
 * of one stock sheet is known from how the panels were made. The scores alone lay the first panel the other way.
 */
const sizes = [
  [502, 514],
  [123, 514],
  [296, 414],
  [329, 414],
  [286, 322],
  [103, 322],
  [236, 322],
] as const;

const task: CuttingTask = {
  panels: sizes.map(([width, height], i) => ({
    mark: `P${i + 1}`,
    stock: ['S'],
    outline: rectangle(0, 0, width * 100, height * 100),
  })),
  stock: [{ id: 'S', width: 62500, height: 125000, price: 500, hasFace: true }],
  rack: [],
  method: 'edge-to-edge',
  kerf: 0,
  leastOffcut: [10000, 10000],
};

test.each([1, 2, 3, 4, 5])(
  'seven panels made from one stock sheet are found to fit on one, seed %i',
  (seed) => {
    const search = searchCutting(task, seed);
    let plan = search.next().value!;
    for (let step = 1; step < 400 && plan.newSheets > 1; step++) plan = search.next().value!;

    expect(faultsOf(task, plan)).toEqual([]);
    expect(plan.newSheets).toBe(1);
    expect(plan.lowerBound).toBe(1);
  },
);
