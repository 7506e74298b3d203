import type { LengthUnits } from '../../core/lengths';
import type { Mm } from '../../core/units';
import { shownUnits } from '../look/shown-units';
import { parseFeet } from './parse-feet';

/** mm in one of each unit a tape is read in. */
const metric: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000 };

/** What is accepted, as it is said where a typed length cannot be read. */
export function acceptedLengths(units: LengthUnits = shownUnits()): string {
  if (units === 'ft-in') return `such as 3' 11 1/4", 47 1/4 or 1200 mm`;
  if (units === 'm') return 'such as 1.2, 120 cm or 1200 mm';
  return units === 'cm' ? 'such as 120, 1.2 m or 1200 mm' : 'such as 1200, 1.2 m or 120 cm';
}

/**
 * A typed length in mm, to the hundredth. Without a unit it is in the job's units (feet and inches: inches); comma and
 * point both part the decimals; spaces are ignored; it may be negative. Feet and inches as in `parseFeet`.
 *
 * @returns null for anything else, also for two commas or points, which could part decimals or thousands
 * @example parseLength('1,2 m') // 1200
 */
export function parseLength(text: string, units: LengthUnits = shownUnits()): Mm | null {
  const length = parseMetric(text, units) ?? parseFeet(text) ?? bareInches(text, units);
  return length === null || !Number.isFinite(length) ? null : Math.round(length * 100) / 100 + 0;
}

/** Whether a typed length says its unit itself and that unit is metric. */
export function saysMetric(text: string): boolean {
  return /\d[.,]?\s*(mm|cm|m)\s*$/i.test(text);
}

function parseMetric(text: string, units: LengthUnits): Mm | null {
  const match = /^([+−-]?)(\d+(?:[.,]\d*)?|[.,]\d+)(mm|cm|m)?$/i.exec(text.replace(/\s+/g, ''));
  if (!match) return null;
  const [, sign, figure, unit = units] = match;
  const one = metric[unit.toLowerCase()];
  // Spaces part whole inches from a fraction; without a unit such a figure is left to them.
  if (one === undefined) return null;
  const length = Number(figure!.replace(',', '.')) * one;
  return sign === '-' || sign === '−' ? -length : length;
}

function bareInches(text: string, units: LengthUnits): Mm | null {
  return units === 'ft-in' ? parseFeet(`${text.trim()}"`) : null;
}
