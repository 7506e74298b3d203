import type { WorkedOut } from '../../worked-out';
import { dealTables, type Schedule } from '../deal-tables';
import type { LodeplanDocument, Page, TextMeasure } from '../page';
import { titleInJob } from '../title-in-job';
import { tradePage, upright, type TradeDocument } from '../trade-page';

/** Widest that words of a row may be before they wrap, mm. */
const mostWords = 82;

/** What stands in a set, numbered, with the names of its pages; then the revisions that were issued. */
export function registerPages(
  worked: WorkedOut,
  documents: readonly LodeplanDocument[],
  measure: TextMeasure,
): Page[] {
  const { job } = worked;
  const document: TradeDocument = {
    job,
    title: 'Drawing register',
    documentType: 'Drawing register',
    notes: [
      'Page 3.2 of this set is sheet 2 of document 3. Check that the set is whole before you work from it.',
      'Every document shows the revision that stands in its title block.',
    ],
    cautions: [],
  };
  const pageOf = (sheet: number, sheets: number) => tradePage(document, sheet, sheets, measure);
  // Rows are dealt by the smaller room of the first page, which bears the notes.
  const dealt = dealTables([contents(documents, job.name), ...issues(job)], pageOf(1, 1).space, measure);
  return dealt.map((items, i) => upright([...pageOf(i + 1, dealt.length).items, ...items]));
}

function contents(documents: readonly LodeplanDocument[], jobName: string): Schedule {
  return {
    heading: 'Documents',
    columns: [
      { heading: 'No.', align: 'right' },
      { heading: 'Document', align: 'left', most: mostWords },
      { heading: 'Sheets', align: 'right' },
      { heading: 'Pages of the set', align: 'left' },
      { heading: 'Paper', align: 'left', most: 30 },
    ],
    rows: documents.map((drawn, i) => {
      const { length } = drawn.pages;
      const first = `${i + 1}.1`;
      return {
        kind: 'row',
        cells: [
          String(i + 1),
          titleInJob(drawn, jobName),
          String(length),
          length === 1 ? first : `${first} to ${i + 1}.${length}`,
          papersOf(drawn),
        ],
      };
    }),
  };
}

/** @example papersOf(document) // 'A3 landscape, A4 portrait' */
export function papersOf({ pages }: LodeplanDocument): string {
  const papers = pages.map(({ format, landscape }) => `${format} ${landscape ? 'landscape' : 'portrait'}`);
  return [...new Set(papers)].join(', ');
}

function issues({ revisions }: WorkedOut['job']): Schedule[] {
  if (revisions.length === 0) return [];
  return [
    {
      heading: 'Issued before',
      columns: [
        { heading: 'Revision', align: 'left' },
        { heading: 'Date', align: 'left' },
        { heading: 'Note', align: 'left', most: mostWords },
      ],
      rows: revisions.map(({ id, date, note }) => ({ kind: 'row', cells: [id, date, note] })),
    },
  ];
}
