/*
 * Exact arithmetic on decimals as they are written: 0.1 is a tenth here, not its binary neighbour.
 */

/** `digits` / 10^`places`. */
export interface Decimal {
  readonly digits: bigint;
  readonly places: number;
}

/** When a half is rounded: away from zero, or to the even neighbour. Source: ISO 80000-1, annex B, rules B and A (from memory). */
export type Rounding = 'half-up' | 'half-even';

/** A finite number by its shortest decimal writing. */
export function decimalOf(value: number): Decimal {
  const [mantissa, exponent = '0'] = String(value).split('e');
  const [whole, fraction = ''] = mantissa!.split('.');
  const places = fraction.length - Number(exponent);
  const digits = BigInt(whole! + fraction);
  return places >= 0 ? { digits, places } : { digits: digits * 10n ** BigInt(-places), places: 0 };
}

/** numerator / denominator to a whole number. @throws Error if the denominator is 0 */
export function roundedQuotient(numerator: bigint, denominator: bigint, rounding: Rounding): bigint {
  if (denominator === 0n) throw new Error('Nothing can be shared among none.');
  const negative = numerator < 0n !== denominator < 0n;
  const [n, d] = [numerator < 0n ? -numerator : numerator, denominator < 0n ? -denominator : denominator];
  const [floor, twice] = [n / d, 2n * (n % d)];
  const up = twice > d || (twice === d && (rounding === 'half-up' || floor % 2n === 1n));
  const size = up ? floor + 1n : floor;
  return negative ? -size : size;
}

/** Product of numbers over a product of numbers, rounded once to a whole number. */
export function wholeOf(over: readonly number[], under: readonly number[], rounding: Rounding): number {
  const [a, b] = [over, under].map((factors) =>
    factors
      .map(decimalOf)
      .reduce((all, one) => ({ digits: all.digits * one.digits, places: all.places + one.places }), {
        digits: 1n,
        places: 0,
      }),
  );
  const numerator = a!.digits * 10n ** BigInt(b!.places);
  const denominator = b!.digits * 10n ** BigInt(a!.places);
  return Number(roundedQuotient(numerator, denominator, rounding)) + 0;
}
