import type { LengthUnits } from '../lengths';
import { inch } from '../lengths';
import { formatFigure } from './money';

/* Areas as an offer counts them: m², or ft² in jobs in feet and inches, to two places. */

const squareFoot = (12 * inch * 100) ** 2;

export function areaUnit(units: LengthUnits = 'mm'): 'm²' | 'ft²' {
  return units === 'ft-in' ? 'ft²' : 'm²';
}

/** @param area hundredths squared */
export function areaIn(area: number, units: LengthUnits = 'mm'): number {
  return Number((area / (units === 'ft-in' ? squareFoot : 1e10)).toFixed(2));
}

/** m², exact to two places, whatever the job's units: what rates are given for. */
export function squareMetres(area: number): number {
  return areaIn(area, 'mm');
}

/** Counted in the unit that a price is given for, to two places. @param unit one of `areaUnits` */
export function areaForPrice(area: number, unit: string): number {
  return areaIn(area, unit.startsWith('ft') ? 'ft-in' : 'mm');
}

/** @example areaInWords(42_000_000_000, 'mm', 'en-GB') // 4.20 m², with a space that does not break */
export function areaInWords(area: number, units: LengthUnits | undefined, locale: string): string {
  return `${formatFigure(areaIn(area, units), locale, 2)}\u00A0${areaUnit(units)}`;
}
