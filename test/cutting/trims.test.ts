import { describe, expect, test } from 'vitest';
import { rectangle } from '../../core/geometry/polygon';
import type { CutPanel, CuttingTask } from '../../core/cutting/plan';
import { searchCutting } from '../../core/cutting/search';
import { faultsOf } from './verify-plan';

const trim = { left: 1000, right: 500, bottom: 100, top: 2000 };
const panel = (mark: string, width: number, height: number): CutPanel => ({
  mark,
  stock: ['S'],
  outline: rectangle(0, 0, width, height),
});

function firstSheet(more: Partial<CuttingTask>) {
  const task: CuttingTask = {
    panels: [],
    // As bought: 1000 × 500 mm.
    stock: [{ id: 'S', width: 98500, height: 47900, trim, price: 10, hasFace: false }],
    rack: [],
    method: 'edge-to-edge',
    kerf: 0,
    leastOffcut: [10000, 10000],
    ...more,
  };
  const plan = searchCutting(task, 1).next().value!;
  expect(faultsOf(task, plan)).toEqual([]);
  return plan.sheets[0]!;
}

const lines = ({ cuts }: ReturnType<typeof firstSheet>) =>
  cuts.map(({ from, to }) => [from.x, from.y, to.x, to.y]);

describe.each(['edge-to-edge', 'free'] as const)('margins of a stock sheet, cut %s,', (method) => {
  const whole = { method, panels: [panel('P', 98500, 47900)] };

  test('come off a panel that takes all between them: four cuts, each right across what is left', () => {
    const sheet = firstSheet(whole);
    expect([sheet.width, sheet.height]).toEqual([100000, 50000]);
    expect(sheet.placements[0]!.outline).toEqual(rectangle(1000, 100, 98500, 47900));
    expect(lines(sheet)).toEqual([
      [1000, 0, 1000, 50000],
      [99500, 0, 99500, 50000],
      [1000, 100, 99500, 100],
      [1000, 48000, 99500, 48000],
    ]);
  });

  test('swallow the kerf; one narrower than the kerf is still one cut', () => {
    expect(lines(firstSheet({ ...whole, kerf: 300 }))).toEqual([
      [700, 0, 700, 50000],
      [99500, 0, 99500, 50000],
      [1000, 0, 99500, 0],
      [1000, 48000, 99500, 48000],
    ]);
  });

  test('come off before any panel is cut, and offcuts lie between them', () => {
    const sheet = firstSheet({ method, panels: [panel('P', 48500, 47900)] });
    expect(sheet.offcuts).toMatchObject([{ x: 49500, y: 100, width: 50000, height: 47900, keep: true }]);
    expect(sheet.cuts).toHaveLength(5);
    expect(lines(sheet)[4]).toEqual([49500, 100, 49500, 48000]);
  });

  test('are off a rack piece already', () => {
    const rack = [{ id: 'R', stock: 'S', width: 60000, height: 40000 }];
    const sheet = firstSheet({ method, rack, panels: [panel('P', 60000, 40000)] });
    expect(sheet).toMatchObject({ fromRack: 'R', width: 60000, height: 40000, cuts: [] });
  });
});

test('the verifier misses no margin that is not cut off, or cut off late', () => {
  const task: CuttingTask = {
    panels: [panel('P', 48500, 47900)],
    stock: [{ id: 'S', width: 98500, height: 47900, trim, price: 10, hasFace: false }],
    rack: [],
    method: 'edge-to-edge',
    kerf: 0,
    leastOffcut: [10000, 10000],
  };
  const plan = searchCutting(task, 1).next().value!;
  const [sheet] = plan.sheets;
  const withCuts = (cuts: NonNullable<typeof sheet>['cuts']) =>
    faultsOf(task, { ...plan, sheets: [{ ...sheet!, cuts }] });
  expect(withCuts(sheet!.cuts.slice(1))).not.toEqual([]);
  expect(withCuts([...sheet!.cuts].reverse())).not.toEqual([]);
  expect(withCuts(sheet!.cuts)).toEqual([]);
});
