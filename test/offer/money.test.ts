import { describe, expect, it } from 'vitest';
import {
  formatAmount,
  formatFigure,
  formatMoney,
  percentOf,
  perUnit,
  shareOut,
  surcharged,
  times,
  toMajor,
  toMinor,
} from '../../core/offer/money';

describe('money in whole minor units', () => {
  it('comes from the decimals of the job file and goes back to them', () => {
    expect(toMinor(6.405, 'EUR')).toBe(641);
    expect(toMinor(1.005, 'EUR')).toBe(101);
    expect(toMinor(1234, 'JPY')).toBe(1234);
    expect(toMinor(1.2345, 'KWD')).toBe(1235);
    expect(toMajor(123456, 'EUR')).toBe(1234.56);
    expect(toMajor(1234, 'JPY')).toBe(1234);
    expect(toMajor(-5, 'BHD')).toBe(-0.005);
  });

  it('rounds once, by the rule that it is given', () => {
    expect(percentOf(250, 1, 'half-up')).toBe(3);
    expect(percentOf(250, 1, 'half-even')).toBe(2);
    expect(percentOf(350, 1, 'half-even')).toBe(4);
    expect(percentOf(-250, 1, 'half-up')).toBe(-3);
    // In binary 1.15 · 100 is 114.99999999999999.
    expect(times(100, 1.15, 'half-up')).toBe(115);
    expect(times(1, 0.5, 'half-up')).toBe(1);
    expect(surcharged(1000, [10, 20], 'half-up')).toBe(1320);
    expect(surcharged(333, [7.5, 12.5], 'half-up')).toBe(403);
    expect(perUnit(1000, 3, 'half-up')).toBe(333);
    expect(() => perUnit(1000, 0, 'half-up')).toThrow('none');
  });

  it('shares a whole out with nothing lost, the earlier first where remainders are alike', () => {
    expect(shareOut(100, [1, 1, 1])).toEqual([34, 33, 33]);
    expect(shareOut(-100, [1, 1, 1])).toEqual([-34, -33, -33]);
    expect(shareOut(5, [0, 0])).toEqual([3, 2]);
    expect(shareOut(7, [0, 2.5, 0])).toEqual([0, 7, 0]);
    expect(shareOut(7, [])).toEqual([]);
  });

  it('is written as the locale asks, and in the usual way where nobody knows the locale', () => {
    expect(formatMoney(123450, 'EUR', 'en-GB')).toBe('€1,234.50');
    expect(formatMoney(123450, 'EUR', 'de-DE')).toBe('1.234,50\u00A0€');
    expect(formatMoney(123450, 'EUR', 'en-GB', 'code')).toBe('EUR\u00A01,234.50');
    expect(formatMoney(1234, 'JPY', 'en-GB', 'code')).toBe('JPY\u00A01,234');
    expect(formatMoney(1234567, 'KWD', 'en-GB', 'code')).toBe('KWD\u00A01,234.567');
    expect(formatAmount(123450, 'EUR', 'fr-FR')).toBe('1\u00A0234,50');
    expect(formatAmount(123450, 'EUR', 'ar-EG')).toMatch(/^[0-9.,]+$/);
    expect(formatAmount(123450, 'EUR', 'no such locale')).toBe(formatAmount(123450, 'EUR', 'sv-SE'));
    expect(formatFigure(4.2, 'en-GB', 2)).toBe('4.20');
    expect(formatFigure(7.5, 'de-DE', 0, 3)).toBe('7,5');
  });
});
