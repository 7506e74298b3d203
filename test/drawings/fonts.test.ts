import { describe, expect, it } from 'vitest';
import { faceNames, measureWith, readFaces, substituteMissingGlyphs } from '../../core/drawings/fonts';
import { alignGlyphs } from '../../core/drawings/aligned-font';
import { fontFiles } from './font-files';
import fontkit from '@pdf-lib/fontkit';

const faces = readFaces(fontFiles);
const measure = measureWith(fontFiles);

describe('ISO 3098: the nominal height is the height of a capital', () => {
  it.each(faceNames)('for %s, measured on the outline of an H', (name) => {
    const { font, sizePerCapital } = faces[name];
    const { minY, maxY } = font.glyphForCodePoint('H'.codePointAt(0)!).bbox;
    expect(((maxY - minY) / font.unitsPerEm) * sizePerCapital * 2.5).toBeCloseTo(2.5, 1);
  });
});

describe('measuring', () => {
  it('gives every figure the same width', () => {
    const widths = [...'0123456789'].map((figure) => measure(figure, 2.5, { face: 'condensed' }));
    expect(new Set(widths).size).toBe(1);
  });

  it('adds letters up without kerning or ligatures', () => {
    for (const text of ['office', 'AVATAR', 'Type fl fi', '1920,5']) {
      const sum = [...text].reduce((total, letter) => total + measure(letter, 5), 0);
      expect(measure(text, 5)).toBeCloseTo(sum, 9);
    }
  });

  it('reads a letter and its combining mark as the composed letter (NFC)', () => {
    expect(measure('u\u0308', 5)).toBe(measure('ü', 5));
  });
});

describe('a glyph the font lacks', () => {
  const font = faces.sans.font;
  it.each([
    ['Ő, Ω, Ж, ½, ×, ±, Ø', 'Ő, Ω, Ж, ½, ×, ±, Ø'],
    ['2\u2033 pipe', '2" pipe'],
    ['印刷所', '???'],
    ['a\u200bb\u0007c\td\u00a0e', 'abc d e'],
  ])('%j is drawn as %j', (text, drawn) => {
    expect(substituteMissingGlyphs(text, font)).toBe(drawn);
  });

  it('gives way to its base letter where the font has that one', () => {
    const ascii = { hasGlyphForCodePoint: (code: number) => code < 0x7f };
    expect(substituteMissingGlyphs('Műhely ①', ascii)).toBe('Muhely 1');
  });
});

describe('OpenType "loca": a font aligned for subsetting', () => {
  it.each(faceNames)('%s keeps every outline', (name) => {
    const aligned = fontkit.create(alignGlyphs(fontFiles[name]));
    for (const letter of 'AÖgÅß½×Ж8,') {
      const code = letter.codePointAt(0)!;
      expect(aligned.glyphForCodePoint(code).path.toSVG()).toBe(
        faces[name].font.glyphForCodePoint(code).path.toSVG(),
      );
    }
  });
});
