import { formatHundredth, formatMm } from '../../core/drawings/figures';
import type { Hundredth, Mm } from '../../core/units';

/*
 * Figures as the screen writes them: with a decimal point, since "11,303" would be read as thousands in an English
 * sentence. Drawings on paper keep the comma of the drawing practice.
 */

/** A length in mm, at most two places: `1926.5`. */
export function lengthFigure(length: Mm): string {
  return withPoint(formatMm(length, 2));
}

/** A kernel length in mm, at most one place, as on the drawings. */
export function hundredthFigure(length: Hundredth): string {
  return withPoint(formatHundredth(length));
}

/** Hundredths squared in square metres, always two places: `11.30`. */
export function areaFigure(area: number): string {
  return (area / 1e10).toFixed(2);
}

/** A share of one in per cent: `2.6 %`. */
export function percentFigure(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

/** Hundredths in metres: `10.9 m`. */
export function metresFigure(length: Hundredth): string {
  return `${(length / 1e5).toFixed(1)} m`;
}

/** Kilograms: `40.1 kg`. */
export function massFigure(kilograms: number): string {
  return `${kilograms.toFixed(1)} kg`;
}

/** Words that were written for paper: `78,5 × 96` becomes `78.5 × 96`; a comma between words stays. */
export function withPoint(words: string): string {
  return words.replace(/(?<=\d),(?=\d)/g, '.');
}
