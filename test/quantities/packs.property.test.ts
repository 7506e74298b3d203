import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choosePacks, type PackOffered } from '../../core/quantities/packs';

/** Every number of every pack that could be of use, tried one by one. */
function byTryingAll(need: number, packs: readonly PackOffered[]): readonly [number, number, number] {
  const isPriced = packs.every(({ price }) => price > 0);
  let best: [number, number, number] = [Infinity, Infinity, Infinity];
  const tryFrom = (i: number, held: number, cost: number, count: number) => {
    if (held >= need || i === packs.length) {
      if (held < need) return;
      const key: [number, number, number] = [isPriced ? cost : held, held, count];
      if (compare(key, best) < 0) best = key;
      return;
    }
    const most = Math.ceil((need - held) / packs[i]!.size);
    for (let n = 0; n <= most; n++) {
      tryFrom(i + 1, held + n * packs[i]!.size, cost + n * packs[i]!.price, count + n);
    }
  };
  tryFrom(0, 0, 0, 0);
  return best;
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i]! - b[i]!;
  return 0;
}

const pack = (price: fc.Arbitrary<number>) => fc.record({ size: fc.integer({ min: 1, max: 14 }), price });
const priced = fc.array(pack(fc.integer({ min: 1, max: 40 })), { minLength: 1, maxLength: 4 });
const unpriced = fc.array(pack(fc.constant(0)), { minLength: 1, maxLength: 4 });

describe('the cheapest set of packs, against every set', () => {
  it.each([
    ['priced', priced],
    ['of unknown price', unpriced],
  ])('%s: cost, left-over and number are the least', (_, packs) => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), packs, (need, offered) => {
        const choice = choosePacks(need, offered)!;
        const count = choice.packs.reduce((sum, one) => sum + one.count, 0);
        const isPriced = offered.every(({ price }) => price > 0);
        expect([isPriced ? choice.cost : choice.total, choice.total, count]).toEqual(
          byTryingAll(need, offered),
        );
        expect(choice.leftOver).toBeCloseTo(choice.total - need, 9);
        expect(choice.exact).toBe(true);
      }),
      { numRuns: 400 },
    );
  });

  it('is the same where the need is so large that most is bought before anything is weighed up', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 400 }),
        fc.array(fc.record({ size: fc.integer({ min: 1, max: 7 }), price: fc.integer({ min: 1, max: 9 }) }), {
          minLength: 1,
          maxLength: 3,
        }),
        (need, offered) => {
          const choice = choosePacks(need, offered)!;
          const count = choice.packs.reduce((sum, one) => sum + one.count, 0);
          expect([choice.cost, choice.total, count]).toEqual(byTryingAll(need, offered));
        },
      ),
      { numRuns: 150 },
    );
  });
});
