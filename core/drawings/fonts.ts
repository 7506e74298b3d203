import fontkit, { type Font } from '@pdf-lib/fontkit';
import type { Mm } from '../units';
import type { TextMeasure, TextStyle } from './page';

/*
 * Measuring text with the fonts that print it. Core reads no files: whoever calls brings the bytes of four
 * static TrueType fonts.
 */

export interface FontFiles {
  readonly sans: Uint8Array;
  readonly sansSemiBold: Uint8Array;
  readonly condensed: Uint8Array;
  readonly condensedSemiBold: Uint8Array;
}

export type FaceName = keyof FontFiles;

export const faceNames: readonly FaceName[] = ['sans', 'sansSemiBold', 'condensed', 'condensedSemiBold'];

/** Figures of one width, and every letter as it was typed: no ligature, no kerning, no swash. */
export const fontFeatures = { liga: false, clig: false, calt: false, kern: false, tnum: true } as const;

export interface Face {
  readonly font: Font;
  /** Size of the font in mm at which a capital is 1 mm high. */
  readonly sizePerCapital: number;
}

export function faceOf({ face, weight }: TextStyle = {}): FaceName {
  if (face === 'condensed') return weight === 'semi-bold' ? 'condensedSemiBold' : 'condensed';
  return weight === 'semi-bold' ? 'sansSemiBold' : 'sans';
}

/** @throws Error if bytes are no font or a font does not state the height of its capitals */
export function readFaces(files: FontFiles): Record<FaceName, Face> {
  const read = (name: FaceName): Face => {
    const font = fontkit.create(files[name]);
    if (!(font.capHeight > 0)) throw new Error(`The font for ${name} does not state its capital height.`);
    return { font, sizePerCapital: font.unitsPerEm / font.capHeight };
  };
  return {
    sans: read('sans'),
    sansSemiBold: read('sansSemiBold'),
    condensed: read('condensed'),
    condensedSemiBold: read('condensedSemiBold'),
  };
}

/**
 * A measure that agrees with what the PDF writer draws: sums of advance widths after substitution of missing
 * glyphs. Make one for a whole job: reading fonts takes longer than measuring all its pages.
 */
export function measureWith(files: FontFiles): TextMeasure {
  const faces = readFaces(files);
  const advances = {} as Record<FaceName, (text: string) => number>;
  for (const name of faceNames) advances[name] = advanceIn(faces[name].font);
  return (text: string, height: Mm, style?: TextStyle): Mm => {
    const name = faceOf(style);
    const { font, sizePerCapital } = faces[name];
    return (advances[name](drawableText(text, font)) / font.unitsPerEm) * sizePerCapital * height;
  };
}

/**
 * Letters stand side by side without regard to each other, so a text is as long as its letters; only combining
 * marks need the font's own layout.
 */
export function standsAlone(text: string): boolean {
  return !/[\p{M}\p{Cs}]/u.test(text);
}

/** Advance width of a drawable text in font units. It remembers every character it has met. */
export function advanceIn(font: Font): (text: string) => number {
  const known = new Map<string, number>();
  const laidOut = (text: string) =>
    font.layout(text, fontFeatures).glyphs.reduce((sum, glyph) => sum + glyph.advanceWidth, 0);
  const ofCharacter = (character: string): number => {
    const advance = known.get(character) ?? laidOut(character);
    known.set(character, advance);
    return advance;
  };
  return (text) =>
    standsAlone(text) ? [...text].reduce((sum, character) => sum + ofCharacter(character), 0) : laidOut(text);
}

/** What is drawn for a text: composed (NFC), and without a character that the font cannot show. */
export function drawableText(text: string, font: Font): string {
  return substituteMissingGlyphs(text.normalize('NFC'), font);
}

/**
 * Every character that the font lacks replaced by the nearest that it has: a relative in meaning, else its
 * base letter without the mark, else a question mark. White space and line ends become spaces; controls and
 * other characters without a shape of their own go, as they would have shown nothing.
 */
export function substituteMissingGlyphs(text: string, font: Pick<Font, 'hasGlyphForCodePoint'>): string {
  if (/^[ -~]*$/.test(text)) return text;
  const has = (part: string) => [...part].every((one) => font.hasGlyphForCodePoint(one.codePointAt(0)!));
  return [...text]
    .map((character) => {
      if (/\s/u.test(character)) return ' ';
      if (/[\p{Cc}\p{Cf}\p{Variation_Selector}]/u.test(character)) return '';
      if (has(character)) return character;
      const candidates = [relatives[character], withoutMarks(character), character.normalize('NFKC')];
      return candidates.find((one) => one !== undefined && one !== '' && has(one)) ?? '?';
    })
    .join('');
}

/** Stand-ins in meaning, for characters that people do type into names and notes. */
const relatives: Readonly<Record<string, string>> = {
  '\u2010': '-',
  '\u2011': '-',
  '\u2012': '–',
  '\u2015': '—',
  '\u2032': "'",
  '\u2033': '"',
  '\u2215': '/',
  '\u2264': '<=',
  '\u2265': '>=',
  '\u2300': 'Ø',
  '\u2713': 'x',
  '\u2714': 'x',
  '\u25a1': '[ ]',
  '\u2610': '[ ]',
};

function withoutMarks(character: string): string {
  return character.normalize('NFKD').replace(/\p{M}/gu, '');
}
