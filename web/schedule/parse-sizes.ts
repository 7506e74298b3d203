import { formatMm } from '../../core/drawings/figures';
import { acceptedLengths, parseLength } from '../tapes/parse-length';
import type { Entry } from './parse-entry';

/** A length as it stands in a field: mm with a decimal comma, as on the drawings. */
export function writeLength(length: number): string {
  return formatMm(length, 2);
}

/** A place on the wall; may lie on either side of the datum. */
export function parsePlace(text: string): Entry<number> {
  return lengthFrom(text, -Infinity, 'Type a length');
}

/** A size, above 0. */
export function parseSize(text: string): Entry<number> {
  return lengthFrom(text, 0.01, 'Type a size above 0');
}

/** A clearance, gap or other allowance, from 0. */
export function parseAllowance(text: string): Entry<number> {
  return lengthFrom(text, 0, 'Type a length from 0');
}

/** As `parseSize`, or nothing. */
export function parseOptionalSize(text: string): Entry<number | undefined> {
  return text.trim() === '' ? { value: undefined } : parseSize(text);
}

function lengthFrom(text: string, least: number, wanted: string): Entry<number> {
  const doubtful = /^\s*[+−-]?(\d{1,3})([.,])(\d{3})\s*(mm)?\s*$/i.exec(text);
  if (doubtful) {
    const [, whole, mark, rest] = doubtful;
    return {
      fault: `${whole}${mark}${rest} could be ${whole}${rest} or ${formatMm(Number(`${whole}.${rest}`), 3)}; leave the “${mark}” out, or write m.`,
    };
  }
  const value = parseLength(text);
  return value === null || value < least ? { fault: `${wanted}, ${acceptedLengths}.` } : { value };
}
