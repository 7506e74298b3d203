import { BigNumber } from 'bignumber.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minorUnitDigits } from '../../core/job/minor-unit';
import {
  formatAmount,
  percentOf,
  perUnit,
  shareOut,
  surcharged,
  times,
  toMinor,
} from '../../core/offer/money';

BigNumber.config({ DECIMAL_PLACES: 40, EXPONENTIAL_AT: 1e9 });

const modes = [
  ['half-up', BigNumber.ROUND_HALF_UP],
  ['half-even', BigNumber.ROUND_HALF_EVEN],
] as const;
const amounts = fc.integer({ min: -1e9, max: 1e9 });
/** Percentages and quantities with up to three places, as people type them. */
const decimals = fc.integer({ min: 0, max: 1e6 }).map((thousandths) => Number(`${thousandths}e-3`));

describe('bignumber.js 9.3 (MIT), an independent library of decimals', () => {
  it.each(modes)('agrees on products, percentages and surcharges rounded %s', (rounding, mode) => {
    const whole = (value: BigNumber) => value.integerValue(mode).toNumber() + 0;
    fc.assert(
      fc.property(amounts, decimals, decimals, (amount, a, b) => {
        expect(times(amount, a, rounding)).toBe(whole(new BigNumber(amount).times(a)));
        expect(percentOf(amount, a, rounding)).toBe(whole(new BigNumber(amount).times(a).div(100)));
        const both = new BigNumber(amount)
          .times(new BigNumber(a).plus(100))
          .times(new BigNumber(b).plus(100));
        expect(surcharged(amount, [a, b], rounding)).toBe(whole(both.div(10_000)));
      }),
    );
  });

  it.each(modes)('agrees on unit prices rounded %s', (rounding, mode) => {
    fc.assert(
      fc.property(
        amounts,
        decimals.filter((one) => one > 0),
        (amount, quantity) => {
          const expected = new BigNumber(amount).div(quantity).integerValue(mode).toNumber() + 0;
          expect(perUnit(amount, quantity, rounding)).toBe(expected);
        },
      ),
    );
  });
});

describe('largest remainders, published examples', () => {
  // Read on an open page of notes on electoral methods: 930 voters, 4 seats, Hare quota.
  it('930 votes of 500, 300, 110 and 20 for 4 seats: 2, 1, 1, 0', () => {
    expect(shareOut(4, [500, 300, 110, 20])).toEqual([2, 1, 1, 0]);
  });

  // Encyclopedia example of the Hare quota, from memory; the quotas are 4.7, 1.6, 1.58, 1.2, 0.61 and 0.31.
  it('100 000 votes for 10 seats: 5, 2, 1, 1, 1, 0', () => {
    expect(shareOut(10, [47_000, 16_000, 15_800, 12_000, 6_100, 3_100])).toEqual([5, 2, 1, 1, 1, 0]);
  });

  // Read as a question on a public mathematics board: 2.10 of an invoice over 1.99, 2.17 and 0.82 to be refunded.
  it('2.10 shared by 1.99, 2.17 and 0.82, where rounding each share gives 2.11', () => {
    const weights = [199, 217, 82];
    const rounded = weights.map((weight) => Math.round((210 * weight) / 498));
    expect(rounded).toEqual([84, 92, 35]);
    expect(rounded.reduce((a, b) => a + b)).toBe(211);
    expect(shareOut(210, weights)).toEqual([84, 91, 35]);
  });

  // Read as a question on a public programming board: 33.34 for four departments alike; rounding gives 33.36.
  it('33.34 in four equal parts: two of 8.34 and two of 8.33', () => {
    expect(shareOut(3334, [0.25, 0.25, 0.25, 0.25])).toEqual([834, 834, 833, 833]);
  });
});

describe('ISO 4217 minor units (list of the standard, older release read in a public data package)', () => {
  it.each([
    ...['EUR', 'USD', 'GBP', 'CHF'].map((code) => [code, 2] as const),
    ...['JPY', 'KRW', 'CLP', 'ISK', 'VND', 'XOF'].map((code) => [code, 0] as const),
    ...['BHD', 'IQD', 'JOD', 'KWD', 'LYD', 'OMR', 'TND'].map((code) => [code, 3] as const),
  ])('%s has %i digits, in sums and in writing', (code, digits) => {
    expect(minorUnitDigits(code)).toBe(digits);
    expect(toMinor(7, code)).toBe(7 * 10 ** digits);
    expect(formatAmount(toMinor(7, code), code, 'en-GB')).toBe(['7', '7.0', '7.00', '7.000'][digits]);
  });
});
