import { longestHeading } from '../../core/job/limits';
import { lengthFigure, lengthUnit } from '../look/figures';
import type { Entry } from '../schedule/parse-entry';
import { parseSize } from '../schedule/parse-sizes';

/** Headings as they stand in a field; only their number where none is written. */
export function writeHeadings(headings: readonly string[]): string {
  return headings.every((one) => one === '') ? String(headings.length) : headings.join(', ');
}

/** "Mon, Tue, Wed", or how many there are without headings: "5". */
export function parseHeadings(most: number): (text: string) => Entry<string[]> {
  return (text) => {
    const trimmed = text.trim();
    const count = /^\d{1,4}$/.test(trimmed) ? Number(trimmed) : null;
    const headings =
      count === null
        ? trimmed.split(/[,;]/).map((one) => one.trim())
        : Array.from({ length: count }, () => '');
    if (trimmed === '' || headings.length === 0)
      return { fault: 'Type headings with commas between them, or how many there are.' };
    if (headings.length > most) return { fault: `Type at most ${most}.` };
    const long = headings.find((one) => one.length > longestHeading);
    if (long)
      return { fault: `“${long.slice(0, 20)}…” is longer than ${longestHeading} letters; shorten it.` };
    return { value: headings };
  };
}

export function writeSizes(sizes: readonly number[] | undefined): string {
  return sizes ? sizes.map(lengthFigure).join('; ') : 'equal';
}

/** "equal", or as many sizes as there are: "300; 250; 250". */
export function parseSizes(count: number): (text: string) => Entry<number[] | undefined> {
  return (text) => {
    if (/^\s*(equal)?\s*$/i.test(text)) return { value: undefined };
    const entries = text.split(/;|,\s/).map((one) => parseSize(one.trim()));
    const fault = entries.find((entry) => 'fault' in entry);
    if (fault)
      return { fault: `Type sizes above 0 in ${lengthUnit()} with semicolons between them, or “equal”.` };
    if (entries.length !== count)
      return {
        fault: `Type ${count} sizes with semicolons between them, or “equal”; these are ${entries.length}.`,
      };
    return { value: entries.flatMap((entry) => ('value' in entry ? [entry.value] : [])) };
  };
}

/** A whole number from 1. */
export function parseSquares(most: number): (text: string) => Entry<number> {
  return (text) => {
    const value = /^\s*\d{1,6}\s*$/.test(text) ? Number(text) : NaN;
    return value >= 1 && value <= most ? { value } : { fault: `Type a whole number from 1 to ${most}.` };
  };
}
