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

const facesOf = new WeakMap<FontFiles, Record<FaceName, Face>>();

/**
 * The fonts of these files, read once.
 *
 * @throws Error if bytes are no font or a font does not state the height of its capitals
 */
export function readFaces(files: FontFiles): Record<FaceName, Face> {
  const faces = facesOf.get(files) ?? parseFaces(files);
  facesOf.set(files, faces);
  return faces;
}

function parseFaces(files: FontFiles): Record<FaceName, Face> {
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
  const perHeight = {} as Record<FaceName, (text: string) => number>;
  for (const name of faceNames) perHeight[name] = remembered(widthPerHeight(faces[name]));
  return (text: string, height: Mm, style?: TextStyle): Mm => perHeight[faceOf(style)](text) * height;
}

function widthPerHeight({ font, sizePerCapital }: Face): (text: string) => number {
  const advance = advanceIn(font);
  return (text) => (advance(drawableText(text, font)) / font.unitsPerEm) * sizePerCapital;
}

const mostRemembered = 100_000;

/** The same few notes and marks are measured for every page that is tried. */
function remembered(widthOf: (text: string) => number): (text: string) => number {
  const known = new Map<string, number>();
  return (text) => {
    const width = known.get(text) ?? widthOf(text);
    if (known.size >= mostRemembered) known.clear();
    known.set(text, width);
    return width;
  };
}

/**
 * Letters stand side by side without regard to each other, so a text is as long as its letters; only combining
 * marks need the font's own layout.
 */
export function standsAlone(text: string): boolean {
  return !/[\p{M}\p{Cs}]/u.test(text);
}

const advancesIn = new WeakMap<Font, Map<string, number>>();

/** Advance width of a drawable text in font units. Every character met in a font is remembered. */
export function advanceIn(font: Font): (text: string) => number {
  const known = advancesIn.get(font) ?? new Map<string, number>();
  advancesIn.set(font, known);
  const laidOut = (text: string) =>
    font.layout(text, fontFeatures).glyphs.reduce((sum, glyph) => sum + glyph.advanceWidth, 0);
  const ofCharacter = (character: string): number => {
    const advance = known.get(character) ?? laidOut(character);
    known.set(character, advance);
    return advance;
  };
  return (text) => {
    if (!standsAlone(text)) return laidOut(text);
    let sum = 0;
    for (const character of text) sum += ofCharacter(character);
    return sum;
  };
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
  const known = drawnAs.get(font) ?? new Map<string, string>();
  drawnAs.set(font, known);
  let drawn = '';
  for (const character of text) {
    const as = known.get(character) ?? drawnCharacter(character, font);
    known.set(character, as);
    drawn += as;
  }
  return drawn;
}

/** What each character met so far is drawn as: a font takes long to say what it has, and pages are full of the same few. */
const drawnAs = new WeakMap<Pick<Font, 'hasGlyphForCodePoint'>, Map<string, string>>();

function drawnCharacter(character: string, font: Pick<Font, 'hasGlyphForCodePoint'>): string {
  const has = (part: string) => [...part].every((one) => font.hasGlyphForCodePoint(one.codePointAt(0)!));
  if (/\s/u.test(character)) return ' ';
  if (/[\p{Cc}\p{Cf}\p{Variation_Selector}]/u.test(character)) return '';
  if (has(character)) return character;
  const candidates = [relatives[character], withoutMarks(character), character.normalize('NFKC')];
  return candidates.find((one) => one !== undefined && one !== '' && has(one)) ?? '?';
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
