import { leastCornerAngle } from '../../core/job/limits';
import { lengthFigure, lengthWords } from '../look/figures';
import { readLength } from '../tapes/read-length';
import { parseCount, parsePrice, type Entry } from './parse-entry';

/** A length in mm as it stands in a field, in the job's units. */
export function writeLength(length: number): string {
  return lengthFigure(length);
}

/** A place on the wall; may lie on either side of the datum. */
export function parsePlace(text: string): Entry<number> {
  return readLength(text, -Infinity, 'Type a length');
}

/** A size, above 0. */
export function parseSize(text: string): Entry<number> {
  return readLength(text, 0.01, 'Type a size above 0');
}

/** By how much an edge of a zone may move, mm: more than a few sheets' width is another zone, not the same one resized. */
export function parseMargin(text: string): Entry<number> {
  const entry = parseSize(text);
  return 'value' in entry && entry.value > mostMargin
    ? { fault: `Type at most ${lengthWords(mostMargin)}: a larger change is another zone.` }
    : entry;
}

const mostMargin = 2000;

/** A clearance, gap or other allowance, from 0. */
export function parseAllowance(text: string): Entry<number> {
  return readLength(text, 0, 'Type a length from 0');
}

/** As `parseSize`, or nothing. */
export function parseOptionalSize(text: string): Entry<number | undefined> {
  return text.trim() === '' ? { value: undefined } : parseSize(text);
}

/** As `parseAllowance`, or nothing. */
export function parseOptionalAllowance(text: string): Entry<number | undefined> {
  return text.trim() === '' ? { value: undefined } : parseAllowance(text);
}

/** As `parsePrice`, or nothing. */
export function parseOptionalPrice(text: string): Entry<number | undefined> {
  return text.trim() === '' ? { value: undefined } : parsePrice(text);
}

/** As `parseCount`, or nothing. */
export function parseOptionalCount(text: string): Entry<number | undefined> {
  return text.trim() === '' ? { value: undefined } : parseCount(text);
}

/** A figure as one writes it, `-1.5` or `−1,5`; not a number for anything else, such as `0x10` or `1e400`. */
export function plainFigure(text: string): number {
  const tidy = text.trim().replace('−', '-').replace(',', '.');
  return /^-?(\d+(\.\d*)?|\.\d+)$/.test(tidy) ? Number(tidy) : NaN;
}

/** Degrees Celsius, as far as the job file takes them. */
export function parseTemperature(text: string): Entry<number> {
  const value = plainFigure(text);
  return value >= -60 && value <= 150
    ? { value }
    : { fault: 'Type a temperature in degrees Celsius, such as 18.' };
}

/** An area in mm², above 0, or nothing. */
export function parseOptionalArea(text: string): Entry<number | undefined> {
  const tidy = text.trim().replace(/[\s']/g, '').replace(',', '.');
  if (tidy === '') return { value: undefined };
  const value = plainFigure(tidy);
  return value > 0 ? { value } : { fault: 'Type an area in square millimetres, such as 10 000.' };
}

/** Degrees between two walls, as far as the job file takes them. */
export function parseAngle(text: string): Entry<number> {
  const value = plainFigure(text.replace(/\s*°\s*$/, ''));
  return value >= leastCornerAngle && value <= 180 - leastCornerAngle
    ? { value }
    : { fault: `Type degrees from ${leastCornerAngle} to ${180 - leastCornerAngle}.` };
}
