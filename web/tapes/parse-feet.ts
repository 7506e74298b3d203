import { inch } from '../../core/lengths';
import type { Mm } from '../../core/units';

const inchesInFoot = 12;

/** Fractions that keyboards and spreadsheets write as one sign. */
const signs: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const foot = String.raw`(?:'|ft\.?|feet|foot)`;
const mark = String.raw`(?:"|''|in\.?|inch|inches)`;
const figure = String.raw`(?:\d+(?:[.,]\d*)?|[.,]\d+)`;
const fraction = String.raw`(\d+)\s*/\s*(\d+)`;
const pattern = new RegExp(
  String.raw`^([+−-]?)\s*(?:(${figure})\s*${foot})?\s*[-–]?\s*(?:(?:(${figure})(?:\s+|\s*-\s*|$|(?=\s*${mark})))?(?:${fraction})?\s*(${mark})?)?$`,
  'i',
);

/**
 * A length in feet and inches, in mm, not rounded: `3' 11 1/4"`, `3 ft`, `11.5 in`, `3'-0 ½"`. Inches after feet
 * need no mark of their own.
 *
 * @returns null for anything else, also for inches of a foot and more after feet
 */
export function parseFeet(text: string): Mm | null {
  const plain = text
    .trim()
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${signs[sign]!}`)
    .replace(/[’′]/g, "'")
    .replace(/[”″“]/g, '"');
  const match = pattern.exec(plain);
  if (!match) return null;
  const [, sign, feet, whole, over, under, isMarked] = match;
  const hasInches = whole !== undefined || over !== undefined;
  if (feet === undefined ? !hasInches || !isMarked : Boolean(isMarked) && !hasInches) return null;
  const part = over === undefined ? 0 : Number(over) / Number(under);
  const inches = numberOf(whole) + part;
  if (!Number.isFinite(inches) || part >= 1 || (feet !== undefined && inches >= inchesInFoot)) return null;
  const length = (numberOf(feet) * inchesInFoot + inches) * inch;
  return sign === '-' || sign === '−' ? -length : length;
}

function numberOf(figure: string | undefined): number {
  return figure === undefined ? 0 : Number(figure.replace(',', '.'));
}
