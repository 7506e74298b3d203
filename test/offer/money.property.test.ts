import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  formatAmount,
  formatMoney,
  percentOf,
  shareOut,
  sumOf,
  toMajor,
  toMinor,
} from '../../core/offer/money';

const amounts = fc.integer({ min: -1e12, max: 1e12 });
/** Amounts of material: nothing, or a billionth of a unit and more. */
const weight = fc.oneof(fc.constant(0), fc.double({ min: 1e-9, max: 1e13, noNaN: true }));
const weights = fc.array(weight, { minLength: 1, maxLength: 40 });
const currencies = fc.constantFrom('EUR', 'GBP', 'JPY', 'KRW', 'BHD', 'KWD', 'CLF');
const locales = fc.constantFrom('en-GB', 'de-DE', 'fr-FR', 'sv-SE', 'hi-IN', 'ar-EG', 'ja-JP');

describe('money', () => {
  it('is the same after a way into the job file and back', () => {
    fc.assert(
      fc.property(amounts, currencies, (amount, currency) => {
        expect(toMinor(toMajor(amount, currency), currency)).toBe(amount);
      }),
    );
  });

  it('shared out adds up to the whole, each part within one unit of its exact share', () => {
    fc.assert(
      fc.property(amounts, weights, (whole, list) => {
        const parts = shareOut(whole, list);
        expect(sumOf(parts)).toBe(whole);
        const all = list.reduce((sum, weight) => sum + weight, 0);
        // The exact share itself is only known to the dust of binary numbers here.
        const dust = Math.abs(whole) * 1e-12;
        if (all > 0 && Number.isFinite(all)) {
          parts.forEach((part, i) =>
            expect(Math.abs(part - (whole * list[i]!) / all)).toBeLessThan(1 + dust),
          );
        }
      }),
    );
  });

  it('never gives a heavier weight the smaller part', () => {
    fc.assert(
      fc.property(fc.nat(1e9), weights, (whole, list) => {
        const parts = shareOut(whole, list);
        parts.forEach((part, i) =>
          parts.forEach((other, j) => {
            if (list[i]! > list[j]!) expect(part).toBeGreaterThanOrEqual(other);
          }),
        );
      }),
    );
  });

  it('split into parts, a percentage of it changes by no more than half a unit for each part and for the whole', () => {
    fc.assert(
      fc.property(
        fc.array(amounts, { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 0, max: 10_000 }),
        fc.constantFrom('half-up' as const, 'half-even' as const),
        (parts, hundredths, rounding) => {
          const percent = Number(`${hundredths}e-2`);
          const split = sumOf(parts.map((part) => percentOf(part, percent, rounding)));
          const whole = percentOf(sumOf(parts), percent, rounding);
          expect(Math.abs(split - whole)).toBeLessThanOrEqual((parts.length + 1) / 2);
        },
      ),
    );
  });

  it('is written with all its digits in every locale and currency', () => {
    fc.assert(
      fc.property(amounts, currencies, locales, (amount, currency, locale) => {
        for (const text of [
          formatAmount(amount, currency, locale),
          formatMoney(amount, currency, locale, 'code').replaceAll(currency, ''),
        ]) {
          expect(Number(text.replace(/[^0-9]/g, ''))).toBe(Math.abs(amount));
        }
      }),
    );
  });
});
