import type { Mm } from '../../core/units';
import { shownUnits } from '../look/shown-units';
import { acceptedLengths, parseLength, saysMetric } from './parse-length';

/** What was typed: a length, or what is wrong with it in a sentence. */
export type TypedLength = { readonly value: Mm } | { readonly fault: string };

/**
 * A typed length, asked back where it could be read in two ways: "1,200" is 1200 to one hand and 1.2 to another.
 *
 * @param least mm; what is less is refused
 * @param wanted how the request begins: "Type a size above 0"
 */
export function readLength(text: string, least: Mm, wanted: string): TypedLength {
  const doubtful = /^\s*[+−-]?([1-9]\d{0,2})([.,])(\d{3})\s*(mm)?\s*$/i.exec(text);
  // Metres are written to three places, so there nothing is doubtful.
  if (doubtful && (shownUnits() !== 'm' || doubtful[4])) {
    const [, whole, mark, rest] = doubtful;
    return {
      fault: `${whole}${mark}${rest} could be ${whole}${rest} or ${Number(`${whole}.${rest}`)}; leave the “${mark}” out, or write m.`,
    };
  }
  const value = parseLength(text);
  return value === null || value < least ? { fault: `${wanted}, ${acceptedLengths()}.` } : { value };
}

/**
 * Whether someone typed back what stands in a field. Feet and inches are shown to a sixteenth, so the length that they
 * say may not be the one that they stand for, and that one must not move. A metric length is always meant as typed.
 */
export function isTypedBack<T>(draft: string, typed: T | undefined, shown: T | undefined): boolean {
  return typed !== undefined && typed === shown && !saysMetric(draft);
}
