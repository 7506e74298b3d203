import { inch, lengthInWords, sentenceInUnits, sixteenth, writeLength, type LengthUnits } from '../lengths';
import type { Hundredth, Mm } from '../units';
import { formatMm } from './figures';

/*
 * Figures of documents in the units of the job. Millimetres as in `figures.ts`, to a tenth; centimetres and metres as
 * fine; feet and inches to the nearest sixteenth, each figure in one word, so that no line breaks within it.
 */

/** A kernel length as a bare figure. */
export type WriteLength = (length: Hundredth) => string;

export interface PaperFigures {
  readonly units: LengthUnits;
  /** A length to be measured: on a dimension line, in a table. */
  readonly length: WriteLength;
  /** A length to cut to: with the sign of what is rounded, where a sixteenth is not exact. */
  readonly cut: WriteLength;
  /** A length with its unit: `2 mm`, `0,20 m`. */
  readonly words: (length: Mm) => string;
  /** Heading of a column of bare figures: `mm`, `ft-in`. */
  readonly unit: string;
  /** As the title block names it. */
  readonly unitName: string;
  /** Hundredths squared, always three places. */
  readonly area: (area: number) => string;
  readonly areaUnit: 'm²' | 'ft²';
  /** An area that nobody orders by: `4,2 m²`, `45 ft²`. */
  readonly roughly: (area: number) => string;
  /** A length of many metres, one place, with its unit: `2,4 m`, `7,9 ft`. */
  readonly run: (length: Hundredth) => string;
}

/** Before a figure that is not exact. */
export const roundedSign = '~';
/** What stands where figures may carry that sign. */
export const roundedNote = `${roundedSign} rounded to the nearest 1/16 inch; the size in mm is the exact one.`;

const squareFoot = (12 * inch * 100) ** 2;
const foot = 12 * inch * 100;
const unitNames: Readonly<Record<LengthUnits, string>> = {
  mm: 'millimetre',
  cm: 'centimetre',
  m: 'metre',
  'ft-in': 'foot and inch',
};

export function paperFigures(units: LengthUnits = 'mm'): PaperFigures {
  const isFeet = units === 'ft-in';
  const length: WriteLength = (of) => forPaper(writeLength(of / 100, units, 1));
  return {
    units,
    length,
    cut: (of) => `${isRounded(of, units) ? roundedSign : ''}${length(of)}`,
    words: (of) => forPaper(lengthInWords(of, units, 1)),
    unit: units,
    unitName: unitNames[units],
    area: (of) => (of / (isFeet ? squareFoot : 1e10)).toFixed(3).replace('.', ','),
    areaUnit: isFeet ? 'ft²' : 'm²',
    roughly: (of) =>
      isFeet
        ? `${formatMm(Math.max(1, of / squareFoot), 0)} ft²`
        : `${formatMm(Math.max(0.1, of / 1e10))} m²`,
    run: (of) => (isFeet ? `${formatMm(of / foot)} ft` : `${oneDecimal(of / 1e5)} m`),
  };
}

/** Whether the figure of a length in feet and inches is not the length itself. */
export function isRounded(length: Hundredth, units: LengthUnits): boolean {
  if (units !== 'ft-in') return false;
  const written = writeLength(length / 100, units, 1);
  const all = length / 100 / sixteenth;
  return !written.endsWith('mm') && Math.abs(all - Math.round(all)) * sixteenth > 0.01;
}

/** Width × height, width first, always: `500 × 250`. */
export function sizeText(width: Hundredth, height: Hundredth, write: WriteLength): string {
  return `${write(width)} × ${write(height)}`;
}

/** The size of a panel or offcut, and on a line of its own the exact one in mm where the figures are rounded. */
export function sizeWithMm(width: Hundredth, height: Hundredth, { cut, units }: PaperFigures): string {
  const size = sizeText(width, height, cut);
  const exact = exactMm(width, height, units);
  return exact ? `${size}\n${exact}` : size;
}

/** `1196,9 × 600 mm` where figures in feet and inches would be rounded; else empty. */
export function exactMm(width: Hundredth, height: Hundredth, units: LengthUnits): string {
  if (!isRounded(width, units) && !isRounded(height, units)) return '';
  return `${sizeText(width, height, (of) => formatMm(of / 100, 2))}\u00A0mm`;
}

/** A sentence with lengths in mm, in the job's units; places in brackets keep their points, as a comma parts their figures. */
export function sentenceOnPaper(text: string, units: LengthUnits = 'mm'): string {
  return sentenceInUnits(text, units).replace(/(?<=\d)\.(?=\d+ (?:mm|cm|m|×|°))/g, ',');
}

function forPaper(text: string): string {
  return text.replace(/(?<=\d)\.(?=\d)/g, ',').replace(/(?<=\d) (?=\d)/g, '\u00A0');
}

function oneDecimal(value: number): string {
  return (Math.round(value * 10) / 10).toFixed(1).replace('.', ',');
}
