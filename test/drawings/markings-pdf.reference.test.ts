import { describe, expect, it } from 'vitest';
import { clientView } from '../../core/drawings/client-view';
import { measureWith } from '../../core/drawings/fonts';
import { markingsSheet } from '../../core/drawings/markings-sheet';
import { writePdf } from '../../core/drawings/pdf';
import { picturesInFile } from '../../core/drawings/pictures';
import { workOutFully } from '../../core/run/pipeline';
import { markedJob } from '../markings/marked-job';
import { fontFiles } from './font-files';
import { readPdf } from './read-pdf';

const measure = measureWith(fontFiles);
const job = markedJob();
const worked = workOutFully(job, { steps: 1 });
const pictures = picturesInFile(job);
const date = new Date(Date.UTC(2026, 2, 2));

const spanOf = (points: readonly (readonly [number, number])[], axis: 0 | 1) => {
  const places = points.map((point) => point[axis]);
  return Math.max(...places) - Math.min(...places);
};

describe('markings on paper, read back from the PDF with pdfjs-dist', () => {
  it('a map of 1000 × 500 units on 1500 × 750 mm is to the scale that its sheet names', async () => {
    const bytes = await writePdf(markingsSheet(worked, 0, measure, pictures), fontFiles, { date, pictures });
    const { pages } = await readPdf(bytes);
    const page = pages[2]!;
    const scale = Number(page.texts.map(({ text }) => /^SCALE 1:(\d+)$/.exec(text)?.[1]).find(Boolean));
    expect(scale).toBeGreaterThanOrEqual(5);
    const wanted = (mm: number) => mm / scale;
    const isAs = (is: number, mm: number) => Math.abs(is - wanted(mm)) < 0.02;
    // The frame of the drawing is 990 × 490 units, so 1485 × 735 mm; the wall in it 320 units, 480 mm; the table 300 mm round.
    const { strokes } = page;
    const has = (width: number, height: number) =>
      strokes.some(({ points }) => isAs(spanOf(points, 0), width) && isAs(spanOf(points, 1), height));
    expect(has(1485, 735)).toBe(true);
    expect(has(0, 480)).toBe(true);
    expect(
      strokes.some(({ points }) => points.length > 60 && Math.abs(spanOf(points, 0) - wanted(300)) < 0.1),
    ).toBe(true);
    // The place itself, framed.
    expect(has(1500, 750)).toBe(true);
  });

  it('a board of eight squares of 120 has lines 120 apart', async () => {
    const bytes = await writePdf(markingsSheet(worked, 0, measure, pictures), fontFiles, { date });
    const { pages } = await readPdf(bytes);
    const page = pages[1]!;
    const scale = Number(page.texts.map(({ text }) => /^SCALE 1:(\d+)$/.exec(text)?.[1]).find(Boolean));
    const uprights = page.strokes
      .filter(({ points }) => points.length === 2 && spanOf(points, 0) < 1e-6)
      .filter(({ points }) => Math.abs(spanOf(points, 1) - 960 / scale) < 0.02)
      .map(({ points }) => points[0]![0])
      .sort((a, b) => a - b);
    expect(uprights).toHaveLength(9);
    uprights.slice(1).forEach((x, i) => expect(x - uprights[i]!).toBeCloseTo(120 / scale, 2));
  });

  it('headings stand on the client’s page as high as they will be, against the wall of 6000', async () => {
    const { pages } = await readPdf(
      await writePdf(clientView(worked, measure, pictures), fontFiles, { date, pictures }),
    );
    const { texts, strokes } = pages[0]!;
    const wall = strokes.find(({ points, width }) => Math.abs(width - 0.5) < 0.01 && points.length === 5)!;
    const perMm = spanOf(wall.points, 0) / 6000;
    const monday = texts.find(({ text }) => text === 'Monday')!;
    // Capitals of Fira Sans are 689 thousandths of its size high (OS/2 table of the font).
    expect(monday.size * 0.689).toBeCloseTo(30 * perMm, 2);
  });
});
