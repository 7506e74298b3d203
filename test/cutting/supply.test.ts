import { describe, expect, test } from 'vitest';
import { rectangle } from '../../core/geometry/polygon';
import { measure } from '../../core/cutting/measure';
import { readNestTask } from '../../core/cutting/nest';
import { nestWithRack } from '../../core/cutting/nest-with-rack';
import type { CutPanel, CuttingTask, DeliveryPlan } from '../../core/cutting/plan';
import { orderedRules } from '../../core/cutting/rules';
import { searchCutting } from '../../core/cutting/search';
import { faultsOf } from './verify-plan';

const panels = (count: number, width: number, height: number, stock: readonly string[]): CutPanel[] =>
  Array.from({ length: count }, (_, i) => ({
    mark: `${stock.join('')}-${width}-${i}`,
    stock,
    outline: rectangle(0, 0, width, height),
  }));

const task = (more: Partial<CuttingTask>): CuttingTask => ({
  panels: [],
  stock: [
    { id: 'S', width: 500, height: 500, price: 640, hasFace: false },
    { id: 'L', width: 1000, height: 500, price: 1500, hasFace: false },
  ],
  rack: [],
  method: 'edge-to-edge',
  kerf: 0,
  leastOffcut: [100, 100],
  ...more,
});

function cut(t: CuttingTask, steps = 40): DeliveryPlan {
  let last: DeliveryPlan | undefined;
  for (const plan of searchCutting(t, 1)) {
    last = plan;
    if (--steps === 0) break;
  }
  expect(faultsOf(t, last!)).toEqual([]);
  return last!;
}

const counts = (plan: DeliveryPlan) => ({
  S: plan.sheets.filter(({ stock, fromRack }) => stock === 'S' && fromRack === null).length,
  L: plan.sheets.filter(({ stock, fromRack }) => stock === 'L' && fromRack === null).length,
});

describe.each(['edge-to-edge', 'free'] as const)(
  'stock that can be had only so many times, cut %s,',
  (method) => {
    const [small, large] = task({}).stock as [CuttingTask['stock'][0], CuttingTask['stock'][0]];

    test('is left to the panels that nothing else can give', () => {
      const t = task({
        method,
        panels: [...panels(4, 490, 490, ['S', 'L']), ...panels(2, 480, 480, ['S'])],
        stock: [{ ...small, available: 3 }, large],
      });
      // The panels of S alone need two of the three; the other four come from two of L for less than from the third and two of L.
      const plan = cut(t);
      expect(counts(plan).S).toBeLessThanOrEqual(3);
      expect(plan.cost).toBe(2 * 640 + 2 * 1500);
    });

    test('is bought beyond that where no other format can serve, and no panel is lost', () => {
      const plan = cut(
        task({ method, panels: panels(5, 490, 490, ['S']), stock: [{ ...small, available: 2 }, large] }),
      );
      expect(counts(plan)).toEqual({ S: 5, L: 0 });
    });

    test('none at all: the other format serves, dearer as it is', () => {
      const plan = cut(
        task({ method, panels: panels(4, 490, 490, ['S', 'L']), stock: [{ ...small, available: 0 }, large] }),
      );
      expect(counts(plan)).toEqual({ S: 0, L: 2 });
    });
  },
);

describe.each(['edge-to-edge', 'free'] as const)('the value of a rack piece, cut %s,', (method) => {
  const rack = (value?: number) => [{ id: 'R', stock: 'S', width: 500, height: 300, value }];
  const one = { method, panels: panels(1, 490, 290, ['S']) };

  test('below the price of a stock sheet: it is used', () => {
    expect(cut(task({ ...one, rack: rack(639) })).newSheets).toBe(0);
    expect(cut(task({ ...one, rack: rack() })).newSheets).toBe(0);
  });

  test('above: a stock sheet is bought', () => {
    expect(cut(task({ ...one, rack: rack(641) })).newSheets).toBe(1);
  });

  test('is no money for bought stock sheets', () => {
    expect(cut(task({ ...one, rack: rack(100) })).cost).toBe(0);
  });

  test('one dear piece keeps nobody from using a cheap one', () => {
    const plan = cut(
      task({
        ...one,
        panels: panels(2, 490, 290, ['S']),
        rack: [...rack(1), { id: 'Q', stock: 'S', width: 500, height: 290, value: 5000 }],
      }),
    );
    expect(plan.sheets.map(({ fromRack }) => fromRack).sort()).toEqual(['R', null]);
  });
});

test('of equal plans the one with fewer distinct patterns measures better', () => {
  const t = task({ panels: [...panels(2, 500, 300, ['S']), ...panels(2, 500, 200, ['S'])] });
  const nestTask = readNestTask(t);
  const sheets = nestWithRack(nestTask, orderedRules(nestTask)[0]!);
  const filled = sheets[0]!.filled;
  expect(filled.places).toHaveLength(2);
  const turned = {
    ...filled,
    places: filled.places.map((place) => ({ ...place, y: place.y === 0 ? 200 : 0 })),
  };
  expect(turned.places).not.toEqual(filled.places);
  const lying = (a: typeof filled, b: typeof filled) =>
    measure(
      nestTask,
      [
        { stock: 0, rack: -1, filled: a },
        { stock: 0, rack: -1, filled: b },
      ],
      new WeakMap(),
    );
  const [same, other] = [lying(filled, filled), lying(filled, turned)];
  expect([same[5], other[5]]).toEqual([1, 2]);
  expect(same.slice(0, 5)).toEqual(other.slice(0, 5));
});
