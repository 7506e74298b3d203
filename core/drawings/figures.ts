import type { Hundredth, Mm } from '../units';

/**
 * How figures are written on documents for the trade: decimal comma (ISO 129-1:2018), whole millimetres
 * plain, a true minus sign, no thousands mark.
 */

/**
 * A length in mm, at most `decimals` places, trailing zeros dropped; ties to the larger absolute value.
 *
 * @example formatMm(1926.5) // '1926,5'
 */
export function formatMm(length: Mm, decimals = 1): string {
  const factor = 10 ** decimals;
  // toFixed(6) first: 0.15 · 10 is 1.4999999999999998 in binary, and a tape knows nothing of that.
  const rounded = Math.round(Number((Math.abs(length) * factor).toFixed(6))) / factor;
  const sign = length < 0 && rounded > 0 ? '−' : '';
  return sign + String(rounded).replace('.', ',');
}

/** A kernel length in mm. */
export function formatHundredth(length: Hundredth, decimals = 1): string {
  return formatMm(length / 100, decimals);
}

/** Width × height in mm. */
export function formatSize(width: Mm, height: Mm): string {
  return `${formatMm(width)} × ${formatMm(height)}`;
}

/** An area in m² to three places, always all three, so that a column of them can be compared at a glance. */
export function formatSquareMetres(squareMm: number): string {
  return (squareMm / 1e6).toFixed(3).replace('.', ',');
}
