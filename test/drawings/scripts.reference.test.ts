import fontkit from '@pdf-lib/fontkit';
import { decodePDFRawStream, PDFDict, PDFDocument, PDFName, PDFRawStream } from 'pdf-lib';
import { describe, expect, it } from 'vitest';
import { drawableText, faceNames, readFaces } from '../../core/drawings/fonts';
import type { LodeplanDocument, Text, TextStyle } from '../../core/drawings/page';
import { writePdf } from '../../core/drawings/pdf';
import { fontFiles } from './font-files';
import { readPdf } from './read-pdf';

/*
 * Names of people and rooms in the scripts and languages that are asked for. The letters are the alphabets as the Unicode CLDR
 * lists them as main exemplar characters (from memory), upper and lower case; read back by pdf.js.
 */

const alphabets: readonly (readonly [language: string, letters: string])[] = [
  ['German', 'äöüßẞ'],
  ['French', 'àâæçéèêëîïôœùûüÿ'],
  ['Polish', 'aąbcćdeęfghijklłmnńoóprsśtuwyzźż'],
  ['Turkish', 'abcçdefgğhıijklmnoöprsştuüvyzİ'],
  ['Greek', 'αάβγδεέζηήθιίϊΐκλμνξοόπρσςτυύϋΰφχψωώ'],
  ['Russian', 'абвгдеёжзийклмнопрстуфхцчшщъыьэюя'],
  ['Ukrainian', 'єіїґ'],
  ['Serbian', 'ђјљњћџ'],
  ['Vietnamese', 'aàảãáạăằẳẵắặâầẩẫấậđeèẻẽéẹêềểễếệiìỉĩíịoòỏõóọôồổỗốộơờởỡớợuùủũúụưừửữứựyỳỷỹýỵ'],
  ['Czech', 'áčďéěíňóřšťúůýž'],
  ['Hungarian', 'áéíóöőúüű'],
  ['Icelandic', 'áðéíóúýþæö'],
];

const styles: readonly TextStyle[] = [
  {},
  { weight: 'semi-bold' },
  { face: 'condensed' },
  { face: 'condensed', weight: 'semi-bold' },
];

const bothCases = (letters: string) => `${letters} ${letters.toUpperCase()}`;

const names = [
  'Łukasz Żółć-Śliwiński',
  'Işıl Çağrı Gündoğdu, İzmir',
  'Αλέξανδρος Ψυχάρης',
  'Ђорђе Љубичић',
  'Объект № 7, Фёдоров',
  'Nguyễn Thị Ngọc Ánh, Phường Cầu Giấy',
  'Þórdís Æsa Örvarsdóttir',
];

function sheetOf(words: readonly string[]): LodeplanDocument {
  const items = styles.flatMap((style, s) =>
    words.map((text, i): Text => ({
      kind: 'text',
      text,
      at: { x: 15, y: 285 - (s * words.length + i) * 3.2 },
      height: 1.8,
      ...style,
    })),
  );
  return { name: 'scripts', title: 'Scripts', pages: [{ format: 'A4', landscape: false, items }] };
}

const words = [...names, ...alphabets.map(([, letters]) => bothCases(letters))];

describe('alphabets and names on paper, read back by pdf.js', () => {
  it.each(alphabets)('%s: no letter is replaced by another sign in any face', (_, letters) => {
    const faces = readFaces(fontFiles);
    for (const name of faceNames) {
      const text = bothCases(letters).normalize('NFC');
      expect(drawableText(text, faces[name].font)).toBe(text);
    }
  });

  it('arrive as they were written, and with an outline for every letter', async () => {
    const bytes = await writePdf(sheetOf(words), fontFiles, { date: new Date(0) });
    const { pages } = await readPdf(bytes);
    const read = pages[0]!.texts.map(({ text }) => text.normalize('NFC'));
    expect(read).toEqual(styles.flatMap(() => words.map((text) => text.normalize('NFC'))));

    const letters = new Set([...words.join('').normalize('NFC')].filter((letter) => letter.trim()));
    const file = await PDFDocument.load(bytes);
    let fonts = 0;
    for (const [, object] of file.context.enumerateIndirectObjects()) {
      if (!(object instanceof PDFDict) || !object.has(PDFName.of('FontFile2'))) continue;
      const stream = object.lookup(PDFName.of('FontFile2')) as PDFRawStream;
      const font = fontkit.create(decodePDFRawStream(stream).decode()) as unknown as {
        numGlyphs: number;
        getGlyph(id: number): { path: { commands: unknown[] } };
      };
      const drawn = Array.from({ length: font.numGlyphs }, (_, id) => font.getGlyph(id)).filter(
        ({ path }) => path.commands.length > 0,
      );
      // One for each letter, and the one that stands for what is missing.
      expect(drawn.length).toBeGreaterThanOrEqual(letters.size);
      fonts += 1;
    }
    expect(fonts).toBe(faceNames.length);
  });
});
