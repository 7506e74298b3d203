import { minorUnitDigits } from '../job/minor-unit';
import { decimalOf, wholeOf, type Rounding } from './decimal';
import { usualLocale } from './usual-prices';

/*
 * Money as whole numbers of a currency's minor unit (cent, yen, fils). Whatever is not a whole number is rounded once, by a
 * rule that the caller names. Exact up to 2^53 minor units.
 */

/** Whole minor units of the job's currency. */
export type Minor = number & { readonly unit?: 'minor' };

/** @example toMinor(6.405, 'EUR') // 641 */
export function toMinor(amount: number, currency: string): Minor {
  return wholeOf([amount, 10 ** minorUnitDigits(currency)], [1], 'half-up');
}

/** As a price in the job file. */
export function toMajor(amount: Minor, currency: string): number {
  return Number(`${amount}e-${minorUnitDigits(currency)}`);
}

export function sumOf(amounts: readonly Minor[]): Minor {
  return amounts.reduce<number>((sum, amount) => sum + amount, 0);
}

/** A price by a quantity: hours, m², visits. */
export function times(price: Minor, quantity: number, rounding: Rounding): Minor {
  return wholeOf([price, quantity], [1], rounding);
}

/** @example percentOf(8676, 20, 'half-up') // 1735 */
export function percentOf(amount: Minor, percent: number, rounding: Rounding): Minor {
  return wholeOf([amount, percent], [100], rounding);
}

/** With several surcharges one upon the other, rounded once at the end. */
export function surcharged(amount: Minor, percents: readonly number[], rounding: Rounding): Minor {
  const factors = percents.map(addedToHundred);
  return wholeOf(
    [amount, ...factors],
    percents.map(() => 100),
    rounding,
  );
}

/** The price of one unit. @throws Error if there is no quantity */
export function perUnit(amount: Minor, quantity: number, rounding: Rounding): Minor {
  return wholeOf([amount], [quantity], rounding);
}

/**
 * A whole shared out by weights, so that the parts add up to it to the last minor unit: every part is its exact share
 * rounded down, and what is left goes by one to the largest remainders, the earlier first. Equal parts where all weights are 0.
 * Source: the method of largest remainders (Hamilton 1792).
 *
 * @param weights 0 or more each
 * @example shareOut(100, [1, 1, 1]) // [34, 33, 33]
 */
export function shareOut(whole: Minor, weights: readonly number[]): Minor[] {
  if (weights.length === 0) return [];
  const decimals = weights.map(decimalOf);
  const places = Math.max(...decimals.map((one) => one.places));
  const exact = decimals.map((one) => one.digits * 10n ** BigInt(places - one.places));
  const given = exact.reduce((sum, weight) => sum + weight, 0n);
  const [shares, all] = given > 0n ? [exact, given] : [weights.map(() => 1n), BigInt(weights.length)];
  const size = BigInt(Math.abs(whole));
  const parts = shares.map((weight) => (size * weight) / all);
  const remainders = shares.map((weight) => (size * weight) % all);
  const left = Number(size - parts.reduce((sum, part) => sum + part, 0n));
  const gets = new Set(
    remainders
      .map((remainder, i) => ({ remainder, i }))
      .sort((a, b) => (a.remainder === b.remainder ? a.i - b.i : a.remainder > b.remainder ? -1 : 1))
      .slice(0, left)
      .map(({ i }) => i),
  );
  return parts.map((part, i) => Math.sign(whole) * (Number(part) + (gets.has(i) ? 1 : 0)) + 0);
}

/**
 * An amount with its currency, as a locale writes it; figures are always 0 to 9, which the documents' fonts have.
 *
 * @param locale BCP 47 tag; one that nobody knows is read as the usual one
 * @param display `code` where the font may lack the currency's sign
 */
export function formatMoney(
  amount: Minor,
  currency: string,
  locale: string,
  display: 'symbol' | 'code' = 'symbol',
): string {
  return write(toMajor(amount, currency), locale, {
    style: 'currency',
    currency,
    currencyDisplay: display,
    ...placesOf(currency),
  });
}

/** The same without the currency, as it stands in a table. */
export function formatAmount(amount: Minor, currency: string, locale: string): string {
  return write(toMajor(amount, currency), locale, placesOf(currency));
}

/** A figure that is no money: m², hours, per cent. */
export function formatFigure(value: number, locale: string, least = 0, most = least): string {
  return write(value, locale, { minimumFractionDigits: least, maximumFractionDigits: most });
}

function placesOf(currency: string): Intl.NumberFormatOptions {
  const digits = minorUnitDigits(currency);
  return { minimumFractionDigits: digits, maximumFractionDigits: digits };
}

function write(value: number, locale: string, options: Intl.NumberFormatOptions): string {
  return formatOf(locale, { ...options, numberingSystem: 'latn' })
    .format(value)
    .replace(/[\u202F\u2009]/g, '\u00A0');
}

const known = new Map<string, Intl.NumberFormat>();

function formatOf(locale: string, options: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = JSON.stringify([locale, options]);
  const format = known.get(key) ?? makeFormat(locale, options);
  known.set(key, format);
  return format;
}

function makeFormat(locale: string, options: Intl.NumberFormatOptions): Intl.NumberFormat {
  try {
    return new Intl.NumberFormat(locale, options);
  } catch (fault) {
    if (!(fault instanceof RangeError)) throw fault;
    return new Intl.NumberFormat(usualLocale, options);
  }
}

/** 100 + percent without binary dust. */
function addedToHundred(percent: number): number {
  const { digits, places } = decimalOf(percent);
  return Number(`${digits + 100n * 10n ** BigInt(places)}e-${places}`);
}
