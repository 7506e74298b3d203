import { budgetSheet } from '../../core/drawings/budget-sheet';
import { composeDocuments } from '../../core/drawings/compose';
import { measureWith } from '../../core/drawings/fonts';
import type { TextMeasure } from '../../core/drawings/page';
import { writePdf } from '../../core/drawings/pdf';
import { sinceRevision } from '../../core/run/since-revision';
import { loadFonts } from './fonts';
import { workshopPack } from './workshop-pack';
import type { PrintAnswer, PrintOrder } from './print-orders';

/*
 * Everything that only documents need (PDF writer, font reader, whole fonts), beside the screen so that it never
 * waits. Loaded once the first plan stands.
 */

const fonts = loadFonts();
let measure: TextMeasure | undefined;

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
    if (asked.kind === 'workshop') return { order, files: await workshopPack(asked.worked) };
    const pdf = await writePdf(asked.document, await fonts, { date: asked.day, pictures: asked.pictures });
    return { order, pdf: pdf as Uint8Array<ArrayBuffer> };
  } catch (reason) {
    return { order, fault: reason instanceof Error ? reason.message : String(reason) };
  }
}
