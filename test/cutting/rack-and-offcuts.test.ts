import { describe, expect, test } from 'vitest';
import { rectangle } from '../../core/geometry/polygon';
import type { CuttingTask, DeliveryPlan, RackOffcut } from '../../core/cutting/plan';
import { searchCutting } from '../../core/cutting/search';
import { faultsOf } from './verify-plan';

const task = (
  sizes: readonly (readonly [number, number])[],
  rack: readonly RackOffcut[] = [],
  more: Partial<CuttingTask> = {},
): CuttingTask => ({
  panels: sizes.map(([width, height], i) => ({
    mark: `P${i + 1}`,
    stock: ['S'],
    outline: rectangle(0, 0, width, height),
  })),
  stock: [{ id: 'S', width: 500, height: 500, price: 640, hasFace: false }],
  rack,
  method: 'edge-to-edge',
  kerf: 0,
  leastOffcut: [100, 100],
  ...more,
});
const piece = (id: string, width: number, height: number): RackOffcut => ({ id, stock: 'S', width, height });

/** The last plan of so many steps, found sound. */
function cut(t: CuttingTask, steps = 100): DeliveryPlan {
  let last: DeliveryPlan | undefined;
  for (const plan of searchCutting(t, 1)) {
    last = plan;
    if (--steps === 0) break;
  }
  expect(faultsOf(t, last!)).toEqual([]);
  return last!;
}

// Common practice, no source: half-metre plates cover 2 m × 1 m with eight whole sheets and no cut.
test('eight panels as large as their stock sheet take eight whole sheets and no cut', () => {
  const plan = cut(task(Array.from({ length: 8 }, () => [500, 500] as const)));
  expect(plan).toMatchObject({ newSheets: 8, lowerBound: 8, cost: 5120, costLowerBound: 5120 });
  for (const sheet of plan.sheets) {
    expect(sheet.cuts).toEqual([]);
    expect(sheet.offcuts).toEqual([]);
  }
});

test('the example of the file format: a strip leaves an offcut of 400 × 500', () => {
  const plan = cut(task([[100, 500]]));
  expect(plan.sheets[0]!.cuts).toHaveLength(1);
  expect(plan.sheets[0]!.offcuts).toMatchObject([{ width: 400, height: 500, keep: true }]);
});

describe('a rack piece', () => {
  test('is used where it saves a bought sheet', () => {
    const plan = cut(
      task(
        [
          [240, 500],
          [500, 500],
        ],
        [piece('R7', 240, 500)],
      ),
    );
    expect(plan.newSheets).toBe(1);
    expect(plan.lowerBound).toBe(1);
    expect(plan.sheets.map(({ fromRack }) => fromRack).sort()).toEqual(['R7', null]);
  });

  test('stays on the rack where it saves none', () => {
    const plan = cut(
      task(
        [
          [240, 500],
          [260, 500],
        ],
        [piece('R7', 240, 500)],
      ),
    );
    expect(plan.sheets.map(({ fromRack }) => fromRack)).toEqual([null]);
  });

  test('as large as a stock sheet serves a whole panel', () => {
    const plan = cut(
      task(
        [
          [500, 500],
          [500, 500],
        ],
        [piece('R1', 500, 500)],
      ),
    );
    expect(plan).toMatchObject({ newSheets: 1, lowerBound: 1 });
  });

  test('of another stock is left alone', () => {
    const plan = cut(task([[240, 500]], [{ ...piece('R7', 240, 500), stock: 'T' }]));
    expect(plan.newSheets).toBe(1);
  });

  test('only as many are used as are needed', () => {
    const rack = [piece('R1', 100, 100), piece('R2', 240, 500), piece('R3', 150, 150)];
    const plan = cut(
      task(
        [
          [240, 500],
          [260, 500],
          [200, 500],
          [40, 500],
        ],
        rack,
      ),
    );
    expect(plan.newSheets).toBe(1);
    expect(plan.sheets.flatMap(({ fromRack }) => fromRack ?? [])).toEqual(['R2']);
  });
});

describe('several stock formats', () => {
  const formats = [
    { id: 'S', width: 500, height: 500, price: 640, hasFace: false },
    { id: 'T', width: 1000, height: 500, price: 900, hasFace: false },
  ];
  const either = (sizes: readonly (readonly [number, number])[]): CuttingTask => {
    const base = task(sizes, [], { stock: formats });
    return { ...base, panels: base.panels.map((panel) => ({ ...panel, stock: ['S', 'T'] })) };
  };

  test('one small panel comes from the cheaper sheet', () => {
    expect(cut(either([[300, 300]]))).toMatchObject({ cost: 640, costLowerBound: 640 });
  });

  test('two large ones share the larger sheet, which costs less than two', () => {
    expect(
      cut(
        either([
          [480, 480],
          [480, 480],
        ]),
      ),
    ).toMatchObject({ cost: 900, newSheets: 1 });
  });
});

describe('the largest offcut', () => {
  test('is all that is left over, where the panels can stand that way', () => {
    const plan = cut(
      task([
        [200, 300],
        [200, 200],
        [300, 200],
      ]),
    );
    // Of 250,000 the panels take 160,000: a column 200 wide and a strip 200 high leave 300 × 300.
    expect(plan.sheets[0]!.offcuts).toMatchObject([{ width: 300, height: 300, keep: true }]);
  });

  test('runs along a whole side of the emptiest stock sheet', () => {
    const plan = cut(
      task([
        [480, 480],
        [120, 90],
        [110, 80],
        [70, 60],
        [130, 95],
        [60, 40],
      ]),
      60,
    );
    const largest = Math.max(...plan.sheets.flatMap(({ offcuts }) => offcuts.map((o) => o.width * o.height)));
    // 130 + 120 + 110 + 70 + 60 = 490 long side by side, none higher than 95.
    expect(largest).toBeGreaterThanOrEqual(500 * 405);
  });

  test('is kept only if it is large enough, either way round', () => {
    const offcuts = (least: [number, number]) =>
      cut(task([[380, 500]], [], { leastOffcut: least })).sheets[0]!.offcuts.map(({ keep }) => keep);
    expect(offcuts([100, 300])).toEqual([true]);
    expect(offcuts([300, 100])).toEqual([true]);
    expect(offcuts([121, 121])).toEqual([false]);
  });
});

test('a search ends by itself once nothing better can be', () => {
  let steps = 0;
  for (const _ of searchCutting(
    task([
      [250, 500],
      [250, 500],
      [100, 100],
    ]),
    1,
  ))
    if (++steps > 5000) break;
  expect(steps).toBeLessThan(5000);
});

test('no panels, no sheets, and the search ends', () => {
  expect([...searchCutting(task([]), 1)]).toEqual([
    { sheets: [], newSheets: 0, lowerBound: 0, cost: 0, costLowerBound: 0 },
  ]);
});

test('a panel larger than its stock sheet is a fault of whoever asks', () => {
  expect(() => searchCutting(task([[501, 10]]), 1).next()).toThrow('P1 fits no stock sheet');
});
