import type { Mm } from '../../core/units';
import { acceptedLengths, parseLength } from './parse-length';

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
  if (doubtful) {
    const [, whole, mark, rest] = doubtful;
    return {
      fault: `${whole}${mark}${rest} could be ${whole}${rest} or ${Number(`${whole}.${rest}`)}; leave the “${mark}” out, or write m.`,
    };
  }
  const value = parseLength(text);
  return value === null || value < least ? { fault: `${wanted}, ${acceptedLengths}.` } : { value };
}
