import type { Hundredth } from '../units';
import { formatHundredth, formatSquareMetres } from './figures';

/*
 * The sums that stand on cut lists and on the screen, in words. Decimal comma as in `figures.ts`.
 */

/** Width × height, width first, always: `500 × 250`. */
export function sizeText(width: Hundredth, height: Hundredth): string {
  return `${formatHundredth(width)} × ${formatHundredth(height)}`;
}

/** Hundredths squared in square metres: `0,125`. */
export function areaText(area: number): string {
  return formatSquareMetres(area / 1e4);
}

/** A share of one in per cent with one decimal: `2,1 %`. */
export function percentText(share: number): string {
  return `${oneDecimal(share * 100)} %`;
}

/** Hundredths in metres with one decimal: `2,4 m`. */
export function metreText(length: Hundredth): string {
  return `${oneDecimal(length / 1e5)} m`;
}

/** Kilograms with one decimal: `13,7 kg`. */
export function massText(kilograms: number): string {
  return `${oneDecimal(kilograms)} kg`;
}

/** `1 panel`, `2 panels`. */
export function countText(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

function oneDecimal(value: number): string {
  return (Math.round(value * 10) / 10).toFixed(1).replace('.', ',');
}
