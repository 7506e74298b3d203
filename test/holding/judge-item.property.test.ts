import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeItem } from '../../core/holding/judge-item';
import { flatItem, type HeldItem, type PlacedMagnet } from '../../core/holding/item';
import { catalogue } from '../../core/holding/ready-magnets';
import { steelGround } from './grounds';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const situations = fc.record({
  magnet: fc.constantFrom(...catalogue),
  columns: fc.integer({ min: 1, max: 4 }),
  rows: fc.integer({ min: 1, max: 2 }),
  weight: between(0.2, 15),
  reach: between(1, 80),
  aside: between(-40, 40),
  thickness: between(0.35, 1.9),
  gap: between(0.1, 1.9),
});
type Situation = typeof situations extends fc.Arbitrary<infer T> ? T : never;

function itemOf({ magnet, columns, rows, weight, reach, aside, thickness, gap }: Situation): HeldItem {
  const step = 3 * magnet.diameter;
  const magnets = Array.from({ length: columns * rows }, (_, i): PlacedMagnet => ({
    magnet,
    x: (i % columns) * step - ((columns - 1) * step) / 2,
    y: magnet.diameter / 2 + Math.floor(i / columns) * step,
    ground: steelGround({ thickness, gap }),
  }));
  return flatItem(weight, reach, { x: aside, y: 0 }, { magnets, consequence: 'light-at-reach' });
}

const order = ['does not hold', 'holds only if tested', 'holds'];

function isNoBetter(after: HeldItem, before: HeldItem) {
  const [a, b] = [judgeItem(after), judgeItem(before)];
  expect(a.factor!).toBeLessThanOrEqual(b.factor! * (1 + 1e-9));
  expect(order.indexOf(a.verdict)).toBeLessThanOrEqual(order.indexOf(b.verdict));
}

function property(name: string, worse: (situation: Situation) => Situation, seed: number) {
  it(name, () => {
    fc.assert(
      fc.property(situations, (situation) => isNoBetter(itemOf(worse(situation)), itemOf(situation))),
      { numRuns: 300, seed },
    );
  });
}

describe('an item is judged no better', () => {
  property('on thinner steel', (s) => ({ ...s, thickness: Math.max(0.33, s.thickness * 0.8) }), 51);
  property('behind a larger gap', (s) => ({ ...s, gap: s.gap + 0.1 }), 52);
  property('with more weight', (s) => ({ ...s, weight: s.weight * 1.3 }), 53);
  property('with weight further out', (s) => ({ ...s, reach: s.reach * 1.3 }), 54);
  property('with weight further aside', (s) => ({ ...s, aside: s.aside * 1.3 }), 55);

  it('with a magnet less in the row, three diameters apart, where nothing but pull counts', () => {
    fc.assert(
      fc.property(situations, (situation) => {
        fc.pre(situation.columns > 1);
        // Pulled straight off in the middle: no friction in it.
        const pulled = (columns: number): HeldItem => {
          const item = itemOf({ ...situation, columns, aside: 0 });
          const y = item.magnets.reduce((sum, place) => sum + place.y, 0) / item.magnets.length;
          return {
            ...item,
            loads: item.loads.map((load) => ({ ...load, down: 0, out: load.down, x: 0, y })),
          };
        };
        isNoBetter(pulled(situation.columns - 1), pulled(situation.columns));
      }),
      { numRuns: 200, seed: 56 },
    );
  });

  it('in its worst case than as designed', () => {
    fc.assert(
      fc.property(situations, (situation) => {
        const { state, worst } = judgeItem(itemOf(situation));
        expect(worst!.factor).toBeLessThanOrEqual(state!.factor);
      }),
      { numRuns: 200, seed: 57 },
    );
  });
});

describe('an item whose lengths were given in inches', () => {
  it('is judged as in mm', () => {
    fc.assert(
      fc.property(situations, (situation) => {
        const there = judgeItem(itemOf(situation)).factor!;
        const back = judgeItem(
          itemOf({
            ...situation,
            reach: (situation.reach / 25.4) * 25.4,
            aside: (situation.aside / 25.4) * 25.4,
            gap: (situation.gap / 25.4) * 25.4,
          }),
        ).factor!;
        expect(Math.abs(back - there)).toBeLessThanOrEqual(1e-9 * (1 + there));
      }),
      { numRuns: 100, seed: 58 },
    );
  });
});
