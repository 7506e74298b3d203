import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { composeDocuments } from '../../core/drawings/compose';
import { measureWith } from '../../core/drawings/fonts';
import { writePdf } from '../../core/drawings/pdf';
import { emptyJob } from '../../core/job/defaults';
import { workOutFully } from '../../core/run/pipeline';
import { fontFiles } from './font-files';
import { textsOf, wordsOf } from './page-checks';
import { smallJob, smallWorkedOut } from './small-job';

const measure = measureWith(fontFiles);

describe('composeDocuments', () => {
  const worked = smallWorkedOut();
  const documents = composeDocuments(worked, measure);

  it('gives the documents in the order of the work, one setting-out sheet and holding map a wall', () => {
    expect(documents.map(({ name }) => name)).toEqual([
      'setting-out-A',
      'setting-out-B',
      'cut-sheets',
      'cut-list',
      'templates',
      'bundle-labels',
      'panel-labels',
      'holding-map-A',
      'holding-map-B',
      'client-view',
      'materials-list',
      'programme',
      'day-sheets',
      'offer',
      'care-sheet',
      'handover-pack',
    ]);
  });

  it('says on every page which revision of the job it shows', () => {
    for (const { pages } of documents) {
      for (const page of pages) {
        const texts = textsOf(page);
        const inBlock = texts[texts.indexOf('Revision') + 1] === worked.job.revision;
        expect(
          inBlock || texts.join(' ').toLowerCase().includes(`revision ${worked.job.revision}`.toLowerCase()),
        ).toBe(true);
      }
    }
  });

  it('leaves out what a job without steel has nothing to show for', () => {
    const job = smallJob();
    const walls = job.walls.map((wall) => ({ ...wall, zones: [] }));
    const plain = composeDocuments(workOutFully({ ...job, walls }), measure);
    expect(plain.map(({ name }) => name)).toEqual(['setting-out-A', 'setting-out-B']);
  });

  it('gives an empty job no document', () => {
    expect(composeDocuments(workOutFully(emptyJob()), measure)).toEqual([]);
  });
});

describe('cut sheets read back from the PDF with pdfjs-dist', () => {
  const document = composeDocuments(smallWorkedOut(), measure).find(({ name }) => name === 'cut-sheets')!;

  it('carry every mark of the cut list, on A4 upright (ISO 216)', async () => {
    const bytes = await writePdf(document, fontFiles, { date: new Date(Date.UTC(2026, 2, 2)) });
    const pdf = await getDocument({ data: bytes, useSystemFonts: false }).promise;
    const words: string[] = [];
    for (let number = 1; number <= pdf.numPages; number++) {
      const page = await pdf.getPage(number);
      const [, , width, height] = page.view;
      expect(width! / (72 / 25.4)).toBeCloseTo(210, 2);
      expect(height! / (72 / 25.4)).toBeCloseTo(297, 2);
      const { items } = await page.getTextContent();
      for (const item of items) if ('str' in item) words.push(item.str);
    }
    await pdf.destroy();
    expect(pdf.numPages).toBe(document.pages.length);
    const read = words.join(' ').replace(/\s+/g, ' ');
    for (const mark of wordsOf(document).match(/[A-Z]-Z\d-\d+/g)!) expect(read).toContain(mark);
    for (const { walls } of [smallWorkedOut()]) {
      const marks = walls.flatMap(({ zones }) => zones.flatMap(({ layout }) => layout?.panels ?? []));
      for (const { mark } of marks) expect(read).toContain(mark);
    }
  });
});
