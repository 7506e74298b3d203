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
