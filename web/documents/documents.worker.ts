import { budgetSheet } from '../../core/drawings/budget-sheet';
import { composeDocuments } from '../../core/drawings/compose';
import { measureWith } from '../../core/drawings/fonts';
import { holdingCheckOf } from '../../core/drawings/holding-checks';
import type { TextMeasure } from '../../core/drawings/page';
import { writePdf } from '../../core/drawings/pdf';
import { oneSet, subjectOf } from '../../core/drawings/set/one-set';
import { sinceRevision } from '../../core/run/since-revision';
import { loadFonts } from './fonts';
import { loadWorkshop, workshopPack } from './workshop-pack';
import type { PrintAnswer, PrintOrder, PrintProgress } from './print-orders';

/*
 * Everything that only documents need (PDF writer, font reader, whole fonts), beside the screen so that it never
 * waits. Loaded once the first plan stands.
 */

const fonts = loadFonts();
let measure: TextMeasure | undefined;
// A failure shows with the order that needs them.
void fonts.then(loadWorkshop).catch(() => undefined);

self.onmessage = async ({ data }: MessageEvent<PrintOrder>) => {
  self.postMessage(await answer(data));
};

async function answer(asked: PrintOrder): Promise<PrintAnswer> {
  const { order } = asked;
  try {
    if (asked.kind === 'compose') {
      measure ??= measureWith(await fonts);
      const { worked, beside, pictures } = asked;
      const since = sinceRevision(worked, beside.since);
      const { alternatives } = beside;
      return { order, documents: composeDocuments(worked, measure, { alternatives, since, pictures }) };
    }
    if (asked.kind === 'budget') {
      measure ??= measureWith(await fonts);
      return { order, documents: [budgetSheet(asked.budgets, measure)] };
    }
    if (asked.kind === 'holding-check') {
      measure ??= measureWith(await fonts);
      const check = holdingCheckOf(asked.worked, asked.wall, asked.item, measure);
      return { order, documents: check ? [check] : [] };
    }
    if (asked.kind === 'workshop') return { order, files: await workshopPack(asked.worked) };
    return { order, pdf: (await print(asked)) as Uint8Array<ArrayBuffer> };
  } catch (reason) {
    return { order, fault: reason instanceof Error ? reason.message : String(reason) };
  }
}

/** One document, or several bound to a set, which says how far it has come. */
async function print(asked: Extract<PrintOrder, { kind: 'print' | 'bind' }>): Promise<Uint8Array> {
  const { order, day: date, pictures } = asked;
  if (asked.kind === 'print') return writePdf(asked.document, await fonts, { date, pictures });
  measure ??= measureWith(await fonts);
  const set = oneSet(asked.worked, asked.documents, measure);
  const tell = (wrote: number) => {
    self.postMessage({ order, wrote, of: set.pages.length } satisfies PrintProgress);
  };
  return writePdf(set, await fonts, { date, pictures, subject: subjectOf(asked.worked.job), wrote: tell });
}
