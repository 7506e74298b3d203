import { describe, expect, test } from 'vitest';
import { rectangle, translate } from '../../core/geometry/polygon';
import type { CuttingMethod, CuttingTask, DeliveryPlan, PlannedSheet } from '../../core/cutting/plan';
import { faultsOf } from './verify-plan';

/*
 * The verifier itself: a sound plan drawn by hand passes, and each way of spoiling it is noticed.
 *
 *   500 × 500, kerf 2:  ┌──────┬──────────┐
 *                       │  A   │ B  (top 300 left over)
 *                       └──────┴──────────┘   A 200 × 500, B 298 × 200
 */
const task = (method: CuttingMethod): CuttingTask => ({
  panels: [
    { mark: 'A', stock: ['S'], outline: rectangle(0, 0, 200, 500) },
    { mark: 'B', stock: ['S'], outline: rectangle(70, 70, 200, 298) },
  ],
  stock: [{ id: 'S', width: 500, height: 500, price: 7, hasFace: true }],
  rack: [],
  method,
  kerf: 2,
  leastOffcut: [100, 100],
});

const sheet: PlannedSheet = {
  stock: 'S',
  fromRack: null,
  width: 500,
  height: 500,
  placements: [
    { mark: 'A', outline: rectangle(0, 0, 200, 500), quarterTurns: 0, turnedOver: false },
    { mark: 'B', outline: rectangle(202, 0, 298, 200), quarterTurns: 1, turnedOver: false },
  ],
  offcuts: [{ x: 202, y: 202, width: 298, height: 298, keep: true }],
  cuts: [
    { from: { x: 200, y: 0 }, to: { x: 200, y: 500 } },
    { from: { x: 202, y: 200 }, to: { x: 500, y: 200 } },
  ],
};
const plan: DeliveryPlan = { sheets: [sheet], newSheets: 1, lowerBound: 1, cost: 7, costLowerBound: 7 };
const [a, b] = sheet.placements as [PlannedSheet['placements'][0], PlannedSheet['placements'][0]];
const changed = (part: Partial<PlannedSheet>): DeliveryPlan => ({ ...plan, sheets: [{ ...sheet, ...part }] });

describe.each(['edge-to-edge', 'free'] as const)('a plan drawn by hand, cut %s', (method) => {
  test('is sound', () => expect(faultsOf(task(method), plan)).toEqual([]));

  test.each<[string, DeliveryPlan]>([
    ['a panel is missing', changed({ placements: [a] })],
    ['a panel lies there twice', changed({ placements: [a, b, b] })],
    ['panels overlap', changed({ placements: [a, { ...b, outline: translate(b.outline, -50, 0) }] })],
    ['the kerf is too narrow', changed({ placements: [a, { ...b, outline: translate(b.outline, -1, 0) }] })],
    [
      'a panel hangs over the edge',
      changed({ placements: [a, { ...b, outline: translate(b.outline, 1, 0) }] }),
    ],
    ['a panel is not turned as it says', changed({ placements: [a, { ...b, quarterTurns: 0 }] })],
    [
      'a panel has another size',
      changed({ placements: [a, { ...b, outline: rectangle(202, 0, 298, 199) }] }),
    ],
    ['stock with a face is turned over', changed({ placements: [{ ...a, turnedOver: true }, b] })],
    [
      'an offcut overlaps a panel',
      changed({ offcuts: [{ x: 202, y: 102, width: 298, height: 398, keep: true }] }),
    ],
    [
      'an offcut takes the kerf',
      changed({ offcuts: [{ x: 202, y: 201, width: 298, height: 299, keep: true }] }),
    ],
    ['an offcut is wrongly thrown away', changed({ offcuts: [{ ...sheet.offcuts[0]!, keep: false }] })],
    ['a cut is missing', changed({ cuts: sheet.cuts.slice(0, 1) })],
    ['the sheet count is wrong', { ...plan, newSheets: 2 }],
    ['the cost is wrong', { ...plan, cost: 8 }],
    ['the bound is too high', { ...plan, lowerBound: 2 }],
    ['the cost bound is too high', { ...plan, costLowerBound: 8 }],
    ['a rack piece does not exist', changed({ fromRack: 'R1' })],
  ])('is refused when %s', (_, spoilt) => expect(faultsOf(task(method), spoilt)).not.toEqual([]));
});

describe('an edge-to-edge plan drawn by hand is refused when', () => {
  test.each<[string, PlannedSheet['cuts']]>([
    ['the cuts are in the wrong order', [...sheet.cuts].reverse()],
    ['a cut stops short', [{ ...sheet.cuts[0]!, to: { x: 200, y: 400 } }, sheet.cuts[1]!]],
    [
      'a cut runs on over its neighbour',
      [sheet.cuts[0]!, { from: { x: 0, y: 200 }, to: { x: 500, y: 200 } }],
    ],
    ['a cut goes through a panel', [...sheet.cuts, { from: { x: 0, y: 200 }, to: { x: 200, y: 200 } }]],
  ])('%s', (_, cuts) => expect(faultsOf(task('edge-to-edge'), changed({ cuts }))).not.toEqual([]));
});

describe('a notched panel with a smaller one in its notch', () => {
  // An L of 400 × 400 with a notch of 200 × 200 at the upper right; kerf 2.
  const outline = {
    outer: [
      [0, 0],
      [400, 0],
      [400, 200],
      [200, 200],
      [200, 400],
      [0, 400],
    ].map(([x, y]) => ({ x: x!, y: y! })),
    holes: [],
  };
  const notched: CuttingTask = {
    ...task('edge-to-edge'),
    panels: [
      { mark: 'L', stock: ['S'], outline },
      { mark: 'Q', stock: ['S'], outline: rectangle(0, 0, 198, 198) },
    ],
    stock: [{ id: 'S', width: 400, height: 400, price: 7, hasFace: true }],
  };
  const opens = 'L';
  const inNotch = (x: number, cuts: PlannedSheet['cuts']): DeliveryPlan => ({
    ...plan,
    sheets: [
      {
        ...sheet,
        width: 400,
        height: 400,
        placements: [
          { mark: 'L', outline, quarterTurns: 0, turnedOver: false },
          { mark: 'Q', outline: rectangle(x, 202, 198, 198), quarterTurns: 0, turnedOver: false },
        ],
        offcuts: [],
        cuts,
      },
    ],
  });
  const opening = [
    { from: { x: 400, y: 200 }, to: { x: 200, y: 200 }, opens },
    { from: { x: 200, y: 200 }, to: { x: 200, y: 400 }, opens },
  ];

  test('is sound', () => expect(faultsOf(notched, inNotch(202, opening))).toEqual([]));
  test('is refused when the notch is not opened', () =>
    expect(faultsOf(notched, inNotch(202, opening.slice(1)))).not.toEqual([]));
  test('is refused when the small panel is nearer than the kerf', () =>
    expect(faultsOf(notched, inNotch(201, opening))).not.toEqual([]));
  test('is refused when an opening cut belongs to no panel there', () =>
    expect(faultsOf(notched, inNotch(202, [...opening, { ...opening[0]!, opens: 'X' }]))).not.toEqual([]));
});
