import { figure } from '../lengths';
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
  return figure(length, decimals).replace('.', ',');
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
