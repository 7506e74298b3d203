import { inch, unitInWords, writeLength, lengthUnits, type LengthUnits } from '../lengths';
import type { Mm } from '../units';

/*
 * Lengths as text that is read back to the very same number: in the units of the job, and in mm, with its unit, where
 * these would round it.
 */

/** @example exactLengths('ft-in')(1196.975) // 3'-11 1/8" */
export type WriteExactly = (length: Mm) => string;

export function exactLengths(units: LengthUnits = 'mm'): WriteExactly {
  if (units === 'mm') return String;
  return (length) => {
    const written = writeLength(length, units, 6);
    return readExactLength(written, units) === length ? written : `${length} mm`;
  };
}

const feet = String.raw`\d+\s*['’′]`;
const inches = String.raw`(?:\d+\s+\d+/\d+|\d+/\d+|\d+(?:\.\d+)?)\s*["”″]`;
const plain = String.raw`\d+(?:\.\d+)?(?:e[+-]?\d+)?(?:\s*mm\b)?`;

/** One length, without its brackets or marks; a source for larger patterns. */
export const lengthSource = String.raw`[-−]?(?:${feet}(?:\s*-?\s*${inches})?|${inches}|${plain})`;

const onlyLength = new RegExp(`^${lengthSource}$`);
const feetPattern = new RegExp(String.raw`^(\d+)\s*['’′]\s*-?\s*`);
const inchPattern = new RegExp(String.raw`^(?:(\d+(?:\.\d+)?)\b(?!/))?\s*(?:(\d+)/(\d+))?\s*["”″]$`);

/** @returns mm; null for what is no length */
export function readExactLength(text: string, units: LengthUnits = 'mm'): Mm | null {
  const bare = text.trim();
  if (!onlyLength.test(bare)) return null;
  const isNegative = /^[-−]/.test(bare);
  const size = sizeOf(bare.replace(/^[-−]/, ''), units);
  return size === null ? null : isNegative ? -size : size;
}

function sizeOf(text: string, units: LengthUnits): Mm | null {
  if (/mm$/.test(text)) return Number(text.slice(0, -2));
  if (!/["”″'’′]/.test(text)) {
    const figure = Number(text);
    if (units === 'mm') return figure;
    // A bare figure has no meaning among feet and inches, but for nought.
    if (units === 'ft-in') return figure === 0 ? 0 : null;
    return withoutDust(figure * (units === 'cm' ? 10 : 1000));
  }
  const ofFeet = feetPattern.exec(text);
  const rest = ofFeet ? text.slice(ofFeet[0].length) : text;
  const ofInches = rest === '' ? undefined : inchPattern.exec(rest);
  if (ofInches === null || Number(ofInches?.[3] ?? 1) === 0) return null;
  const [, whole = '0', over = '0', under = '1'] = ofInches ?? [];
  return withoutDust((Number(ofFeet?.[1] ?? 0) * 12 + Number(whole) + Number(over) / Number(under)) * inch);
}

/** 119.6975 · 10 is 1196.9750000000001 in binary. */
function withoutDust(length: Mm): Mm {
  return Number(length.toFixed(7));
}

/** The units that a heading names: `In ft and in, from the left`; mm where it names none. */
export function unitsNamedIn(heading: string): LengthUnits {
  const found = [...heading.matchAll(/\bIn (mm|cm|m|ft and in), from the left/g)].at(-1)?.[1];
  return lengthUnits.find((units) => unitInWords(units) === found) ?? 'mm';
}
