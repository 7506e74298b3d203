import { describe, expect, it } from 'vitest';
import { choosePacks, type PackOffered } from '../../core/quantities/packs';

const bought = (need: number, packs: readonly PackOffered[]) =>
  choosePacks(need, packs)?.packs.map(({ size, count }) => [count, size]);

describe('packs for a need', () => {
  it('mixes sizes where that is cheaper', () => {
    const packs = [
      { size: 2.5, price: 3000 },
      { size: 10, price: 9000 },
    ];
    const choice = choosePacks(11.03, packs)!;
    expect(bought(11.03, packs)).toEqual([
      [1, 10],
      [1, 2.5],
    ]);
    expect(choice.cost).toBe(12000);
    expect(choice.leftOver).toBeCloseTo(1.47, 9);
  });

  it('takes the larger pack where it costs no more, and of equal cost what leaves least over', () => {
    expect(
      bought(6, [
        { size: 1, price: 1000 },
        { size: 10, price: 5500 },
      ]),
    ).toEqual([[1, 10]]);
    expect(
      bought(4, [
        { size: 5, price: 2000 },
        { size: 2, price: 1000 },
      ]),
    ).toEqual([[2, 2]]);
  });

  it('takes fewest of what leaves equally little over', () => {
    expect(
      bought(4, [
        { size: 2, price: 1000 },
        { size: 4, price: 2000 },
      ]),
    ).toEqual([[1, 4]]);
  });

  it('leaves least over where a price is unknown, and says no cost then', () => {
    const packs = [
      { size: 5, price: 0 },
      { size: 2, price: 900 },
    ];
    expect(bought(6, packs)).toEqual([[3, 2]]);
    expect(choosePacks(7, packs)).toMatchObject({ cost: null, leftOver: 0, total: 7 });
  });

  it('is not pushed up a pack by binary dust', () => {
    expect(bought(0.1 + 0.2, [{ size: 0.3, price: 100 }])).toEqual([[1, 0.3]]);
    expect(bought(2.5 * 3 + 1e-13, [{ size: 2.5, price: 100 }])).toEqual([[3, 2.5]]);
  });

  it('counts sizes of more decimals than three', () => {
    expect(bought(3.78541, [{ size: 3.78541, price: 4000 }])).toEqual([[1, 3.78541]]);
  });

  it('buys nothing for no need, and knows no packs where there are none', () => {
    expect(choosePacks(0, [{ size: 5, price: 100 }])).toMatchObject({ packs: [], cost: 0, leftOver: 0 });
    expect(choosePacks(3, [])).toBeNull();
  });

  it('says so where the rest alone was weighed up', () => {
    const odd = [
      { size: 9.998, price: 9000 },
      { size: 1.001, price: 1000 },
    ];
    const choice = choosePacks(500_000, odd)!;
    expect(choice.exact).toBe(false);
    expect(choice.total).toBeGreaterThanOrEqual(500_000);
  });
});
