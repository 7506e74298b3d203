import type { Mm } from '../../core/units';
import { parseFeet } from './parse-feet';

/** mm in one of each unit a tape is read in. */
const units: Readonly<Record<string, number>> = { '': 1, mm: 1, cm: 10, m: 1000 };

/** What is accepted, as it is said where a typed length cannot be read. */
export const acceptedLengths = 'such as 1200, 1.2 m or 120 cm';

/**
 * A typed length in mm, to the hundredth. Without a unit it is mm; comma and point both part the decimals;
 * spaces are ignored; it may be negative. Feet and inches as in `parseFeet`.
 *
 * @returns null for anything else, also for two commas or points, which could part decimals or thousands
 * @example parseLength('1,2 m') // 1200
 */
export function parseLength(text: string): Mm | null {
  const length = parseMetric(text) ?? parseFeet(text);
  return length === null || !Number.isFinite(length) ? null : Math.round(length * 100) / 100 + 0;
}

function parseMetric(text: string): Mm | null {
  const match = /^([+−-]?)(\d+(?:[.,]\d*)?|[.,]\d+)(mm|cm|m)?$/i.exec(text.replace(/\s+/g, ''));
  if (!match) return null;
  const [, sign, figure, unit = ''] = match;
  const length = Number(figure!.replace(',', '.')) * units[unit.toLowerCase()]!;
  return sign === '-' || sign === '−' ? -length : length;
}
