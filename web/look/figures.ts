import {
  figure,
  inch,
  lengthInWords,
  sentenceInUnits,
  sixteenth,
  unitInWords,
  writeLength,
} from '../../core/lengths';
import type { Hundredth, Mm } from '../../core/units';
import { shownUnits } from './shown-units';

/*
 * Figures as the screen writes them, lengths in the job's units: with a decimal point, since "11,303" would be read as
 * thousands in an English sentence. On paper the same units stand with the comma of the drawing practice (`core/drawings/paper-figures.ts`).
 */

/** A length as it stands in a field, in mm at most two places: `1926.5`. */
export function lengthFigure(length: Mm): string {
  return writeLength(length, shownUnits());
}

/** A length in a sentence: `1926.5 mm`. */
export function lengthWords(length: Mm): string {
  return lengthInWords(length, shownUnits());
}

/** A sentence whose lengths are in mm, in the job's units. */
export function sentence(text: string): string {
  return sentenceInUnits(text, shownUnits());
}

/** The unit of a figure that stands alone: `mm`. */
export function lengthUnit(): string {
  return unitInWords(shownUnits());
}

/** A kernel length, in mm at most one place, as on the drawings. */
export function hundredthFigure(length: Hundredth): string {
  return writeLength(length / 100, shownUnits(), 1);
}

/** What a free hand and an arrow key go by: a millimetre, or a sixteenth of an inch. */
export function finestStep(): Mm {
  return shownUnits() === 'ft-in' ? sixteenth : 1;
}

const squareFoot = (12 * inch * 100) ** 2;

/** Hundredths squared in the job's unit of area, always two places: `11.30`. */
export function areaFigure(area: number): string {
  return (area / (shownUnits() === 'ft-in' ? squareFoot : 1e10)).toFixed(2);
}

/** `m²`, or `ft²` where lengths are in feet. */
export function areaUnit(): string {
  return shownUnits() === 'ft-in' ? 'ft²' : 'm²';
}

/** A share of one in per cent: `2.6 %`. */
export function percentFigure(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

/** Hundredths in metres, or in feet: `10.9 m`. */
export function metresFigure(length: Hundredth): string {
  return shownUnits() === 'ft-in'
    ? `${(length / 100 / inch / 12).toFixed(1)} ft`
    : `${(length / 1e5).toFixed(1)} m`;
}

/** Kilograms: `40.1 kg`. */
export function massFigure(kilograms: number): string {
  return `${kilograms.toFixed(1)} kg`;
}

/** A figure at most `decimals` places, without needless zeros. */
export function plainFigure(value: number, decimals = 2): string {
  return figure(value, decimals);
}

/** Words that were written for paper: `78,5 × 96` becomes `78.5 × 96`; a comma between words stays. */
export function withPoint(words: string): string {
  return words.replace(/(?<=\d),(?=\d)/g, '.');
}
