import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fontkit from '@pdf-lib/fontkit';
import { decodePDFRawStream, PDFDict, PDFDocument, PDFName, PDFRawStream } from 'pdf-lib';
import { beforeAll, describe, expect, it } from 'vitest';
import { faceNames, measureWith, readFaces } from '../../core/drawings/fonts';
import type { LodeplanDocument, Page, Text } from '../../core/drawings/page';
import { writePdf } from '../../core/drawings/pdf';
import { settingOutSheet } from '../../core/drawings/setting-out';
import { textBox } from '../../core/drawings/text';
import { crowdedWall, jobOf, workedOutOf, zone } from './crowded-job';
import { fontFiles } from './font-files';
import { readPdf, type ReadPage } from './read-pdf';

/*
 * What the PDF says when read back by pdf.js, which shares no code with the writer.
 */

const measure = measureWith(fontFiles);
const date = new Date(Date.UTC(2026, 4, 4, 8, 30));
const layout = { stock: 'S1', start: 'lower-left' };
const worked = workedOutOf(
  jobOf([crowdedWall('A', 5000, 2600, 6, [zone('Z1', 1500, 700, 2000, 1000, layout)])]),
);

let document: LodeplanDocument;
let bytes: Uint8Array;
let pages: ReadPage[];
let info: Record<string, unknown>;
beforeAll(async () => {
  document = settingOutSheet(worked, 0, measure);
  bytes = await writePdf(document, fontFiles, { date });
  ({ pages, info } = await readPdf(bytes));
});

const textsOf = (page: Page) => page.items.filter((item): item is Text => item.kind === 'text');

describe('ISO 216: the page of a setting-out sheet', () => {
  it('is A3 on its side', () => {
    for (const { width, height } of pages) {
      expect(width).toBeCloseTo(420, 6);
      expect(height).toBeCloseTo(297, 6);
    }
  });
});

describe('ISO 5455: true to scale', () => {
  it('a zone of 1,000 mm is 50 mm high at 1:20, a wall of 5,000 mm 250 mm wide, within 0.05 mm', () => {
    expect(pages[0]!.texts.map(({ text }) => text)).toContain('SCALE 1:20');
    const extents = (width: number) =>
      pages[0]!.strokes
        .filter((stroke) => Math.abs(stroke.width - width) < 1e-6 && stroke.points.length > 4)
        .map(({ points }) => {
          const xs = points.map(([x]) => x);
          const ys = points.map(([, y]) => y);
          return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)] as const;
        });
    const near = (a: number, b: number) => Math.abs(a - b) <= 0.05;
    expect(extents(0.7).some(([w, h]) => near(w, 250) && near(h, 130))).toBe(true);
    expect(extents(0.5).some(([w, h]) => near(w, 100) && near(h, 50))).toBe(true);
    // Panels of half a metre: 25 mm.
    expect(extents(0.25).filter(([w, h]) => near(w, 25) && near(h, 25)).length).toBeGreaterThanOrEqual(1);
  });

  it('the scale bar has the length it says', () => {
    const said = pages[0]!.texts.find(({ text }) => text.startsWith('The bar is'))!;
    const length = Number(/is (\d+) mm/.exec(said.text)![1]);
    const bars = pages[0]!.strokes.filter(
      ({ width, points }) =>
        Math.abs(width - 0.25) < 1e-6 && points.length === 5 && points[0]![0] < 130 && points[0]![1] < 60,
    );
    const xs = bars.flatMap(({ points }) => points.map(([x]) => x));
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(length, 3);
  });
});

describe('ISO 128 and ISO 3098 series', () => {
  it('every line width is one of 0.18 0.25 0.35 0.5 0.7 1', () => {
    const series = [0.18, 0.25, 0.35, 0.5, 0.7, 1];
    for (const { width } of pages.flatMap(({ strokes }) => strokes)) {
      expect(series.some((one) => Math.abs(one - width) < 1e-6)).toBe(true);
    }
  });

  it('every text has capitals of 2.5, 3.5, 5 or 7 mm', () => {
    const faces = readFaces(fontFiles);
    const sizes = faceNames.flatMap((name) =>
      [2.5, 3.5, 5, 7].map((height) => height * faces[name].sizePerCapital),
    );
    for (const { size } of pages.flatMap(({ texts }) => texts)) {
      expect(sizes.some((one) => Math.abs(one - size) < 0.002)).toBe(true);
    }
  });
});

describe('ISO 7200: the title block', () => {
  it('is 180 mm wide, in the lower right corner', () => {
    const block = pages[0]!.strokes.find(
      ({ width, points }) =>
        Math.abs(width - 0.7) < 1e-6 && points.length === 5 && Math.abs(points[0]![0] - 230) < 0.01,
    );
    expect(block?.points[1]?.[0]).toBeCloseTo(410, 3);
    expect(block?.points[1]?.[1]).toBeCloseTo(10, 3);
  });

  it('has the mandatory fields by name, and those the job knows filled in', () => {
    const texts = pages[0]!.texts.map(({ text }) => text);
    for (const label of [
      'Legal owner',
      'Identification no.',
      'Date of issue',
      'Sheet',
      'Title',
      'Approved by',
      'Created by',
      'Document type',
    ]) {
      expect(texts).toContain(label);
    }
    for (const value of [
      'CW-1',
      '2026-05-04',
      'C',
      'Setting-out sheet',
      `1 of ${pages.length}`,
      'Crowded walls, Őrség Műhely',
    ]) {
      expect(texts).toContain(value);
    }
  });
});

describe('texts', () => {
  it('are all there, as they were composed, and nothing else', () => {
    document.pages.forEach((page, i) => {
      const composed = textsOf(page)
        .map(({ text }) => text)
        .sort();
      expect(pages[i]!.texts.map(({ text }) => text).sort()).toEqual(composed);
    });
  });

  it('are as wide as they were measured, within a hundredth of a millimetre', () => {
    document.pages.forEach((page, i) => {
      const read = pages[i]!.texts;
      textsOf(page).forEach((text, n) => {
        expect(read[n]!.text).toBe(text.text);
        expect(Math.abs(read[n]!.width - measure(text.text, text.height, text))).toBeLessThan(0.01);
      });
    });
  });

  it('do not lie on each other where the reader finds them', () => {
    for (const [i, page] of document.pages.entries()) {
      const boxes = textsOf(page).map((text, n) => {
        const { x, y, width, turned } = pages[i]!.texts[n]!;
        const own = textBox({ ...text, anchor: 'start', at: { x, y }, turned: turned ? 90 : 0 }, () => width);
        return { text: text.text, ...own };
      });
      boxes.forEach((a, n) => {
        for (const b of boxes.slice(n + 1)) {
          const apart = a.right <= b.left || b.right <= a.left || a.top <= b.bottom || b.top <= a.bottom;
          expect(apart, `${a.text} on ${b.text}`).toBe(true);
        }
      });
    }
  });
});

describe('embedded fonts', () => {
  it('hold an outline for every glyph but the space', async () => {
    const file = await PDFDocument.load(bytes);
    let fonts = 0;
    for (const [, object] of file.context.enumerateIndirectObjects()) {
      if (!(object instanceof PDFDict) || !object.has(PDFName.of('FontFile2'))) continue;
      const stream = object.lookup(PDFName.of('FontFile2')) as PDFRawStream;
      const font = fontkit.create(decodePDFRawStream(stream).decode()) as unknown as {
        numGlyphs: number;
        getGlyph(id: number): { path: { commands: unknown[] }; advanceWidth: number };
      };
      const blank = Array.from({ length: font.numGlyphs }, (_, id) => id).filter(
        (id) => font.getGlyph(id).path.commands.length === 0,
      );
      expect(font.numGlyphs).toBeGreaterThan(3);
      expect(blank.length).toBeLessThanOrEqual(1);
      fonts++;
    }
    expect(fonts).toBeGreaterThanOrEqual(3);
  });
});

describe('the file', () => {
  it('is the same for the same job and date', async () => {
    const again = await writePdf(settingOutSheet(worked, 0, measureWith(fontFiles)), fontFiles, { date });
    expect(Buffer.from(again).equals(Buffer.from(bytes))).toBe(true);
  });

  it('carries title, producer and the given date', () => {
    expect(info).toMatchObject({
      Title: 'Crowded walls: setting-out sheet, wall A Crowded',
      Producer: 'Lodeplan',
      CreationDate: 'D:20260504083000Z',
      ModDate: 'D:20260504083000Z',
    });
  });

  const hasQpdf = spawnSync('qpdf', ['--version']).status === 0;
  it.runIf(hasQpdf)('is clean to qpdf --check (checked where qpdf is installed)', () => {
    const folder = mkdtempSync(join(tmpdir(), 'lodeplan-'));
    try {
      writeFileSync(join(folder, 'sheet.pdf'), bytes);
      const said = execFileSync('qpdf', ['--check', join(folder, 'sheet.pdf')], { encoding: 'utf8' });
      expect(said).toContain('No syntax or stream encoding errors found');
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
