import * as pdfjs from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { composeDocuments } from '../../core/drawings/compose';
import { measureWith } from '../../core/drawings/fonts';
import type { LodeplanDocument } from '../../core/drawings/page';
import { writePdf } from '../../core/drawings/pdf';
import { oneSet, setOf, subjectOf } from '../../core/drawings/set/one-set';
import { demoJob } from '../../core/job/demo';
import { workOutFully } from '../../core/run/pipeline';
import { fontFiles } from './font-files';
import { textFaults, textsOf } from './page-checks';

const measure = measureWith(fontFiles);
const worked = workOutFully({ ...demoJob(), revisions: [] }, { steps: 2 });
const documents = composeDocuments(worked, measure);
const set = oneSet(worked, documents, measure);
const date = new Date(0);

async function readBack(document: LodeplanDocument) {
  const bytes = await writePdf(document, fontFiles, { date, subject: subjectOf(worked.job) });
  const loading = pdfjs.getDocument({ data: bytes.slice(), verbosity: 0 });
  const read = await loading.promise;
  const outline = await read.getOutline();
  const labels = await read.getPageLabels();
  const { info } = await read.getMetadata();
  const pageOf = async (entry: { dest: unknown }) =>
    1 + (await read.getPageIndex((entry.dest as [{ num: number; gen: number }])[0]));
  const first = await Promise.all(outline.map(pageOf));
  const below = await Promise.all(outline.map(({ items }) => Promise.all(items.map(pageOf))));
  await loading.destroy();
  return { bytes, outline, labels, first, below, info: info as Record<string, unknown> };
}

describe('a set', () => {
  it('holds the pages of all its documents in their order, behind the register', () => {
    const bound = documents.flatMap(({ pages }) => pages);
    expect(set.pages.slice(-bound.length)).toEqual(bound);
    expect(set.parts!.reduce((sum, { pageCount }) => sum + pageCount, 0)).toBe(set.pages.length);
  });

  it('registers every document with its count of sheets and the names of its pages', () => {
    const register = set.pages.slice(0, set.parts![0]!.pageCount);
    const words = register.flatMap(textsOf);
    documents.forEach(({ pages: { length } }, i) => {
      expect(words).toContain(length === 1 ? `${i + 1}.1` : `${i + 1}.1 to ${i + 1}.${length}`);
    });
    expect(words).toContain('Cut sheets');
    expect(textFaults({ ...set, pages: register }, measure, true)).toEqual([]);
  });

  it('lists the revisions that were issued before', () => {
    const { job } = worked;
    const revision = { id: 'B', date: '2026-03-09', note: 'Door moved', job: {}, results: {} };
    const issued = { ...worked, job: { ...job, revisions: [revision] } } as unknown as typeof worked;
    const words = oneSet(issued, documents, measure).pages.flatMap(textsOf);
    for (const word of ['B', '2026-03-09', 'Door moved']) expect(words).toContain(word);
  });

  it('leaves out what the job leaves out, and has no pages of nothing', () => {
    const leftOut = documents.slice(1).map(({ name }) => name);
    const chosen = setOf({ printing: { set: { leftOut } } }, documents);
    expect(chosen).toEqual([documents[0]]);
    expect(setOf({}, documents)).toEqual(documents);
    expect(oneSet(worked, [], measure).pages).toEqual([]);
  });
});

describe('a set as PDF, read by pdf.js', () => {
  it('names its pages and has a bookmark for each document and sheet (ISO 32000-1:2008, 12.3.3 and 12.4.2)', async () => {
    const { labels, outline, first, below, info } = await readBack(set);
    const expected = set.parts!.flatMap(({ label, pageCount }) =>
      Array.from({ length: pageCount }, (_, i) => `${label}${i + 1}`),
    );
    expect(labels).toEqual(expected);
    expect(outline.map(({ title }) => title)).toEqual(set.parts!.map(({ title }) => title));
    let from = 1;
    set.parts!.forEach(({ pageCount }, i) => {
      expect(first[i]).toBe(from);
      const sheets = Array.from({ length: pageCount }, (_, k) => from + k);
      expect(below[i]).toEqual(pageCount > 1 ? sheets : []);
      from += pageCount;
    });
    expect(info['Subject']).toBe(subjectOf(worked.job));
    expect(info['Title']).toBe(set.title);
  });

  it('is the same bytes each time, and a document alone has no bookmarks', async () => {
    const [once, again] = [await readBack(set), await readBack(set)];
    expect(Buffer.compare(once.bytes, again.bytes)).toBe(0);
    const alone = await writePdf(documents[0]!, fontFiles, { date });
    const loading = pdfjs.getDocument({ data: alone, verbosity: 0 });
    expect(await (await loading.promise).getOutline()).toBeNull();
    await loading.destroy();
  });

  it('says how far it has come', async () => {
    const wrote: number[] = [];
    await writePdf(set, fontFiles, { date, wrote: (pages) => wrote.push(pages) });
    expect(wrote).toEqual(set.pages.map((_, i) => i + 1));
  });
});
