import { composeDocuments } from '../../core/drawings/compose';
import { measureWith } from '../../core/drawings/fonts';
import type { LodeplanDocument, TextMeasure } from '../../core/drawings/page';
import { writePdf } from '../../core/drawings/pdf';
import type { WorkedOut } from '../../core/worked-out';
import { loadFonts } from './fonts';

/*
 * Everything that only documents need (PDF writer, font reader, whole fonts). It is loaded when somebody goes to
 * Drawings, so that the first page stays light.
 */

const fonts = loadFonts();
let measure: TextMeasure | undefined;

/** The documents of a worked-out job: the plan that is on the screen, not another one. */
export async function compose(worked: WorkedOut): Promise<readonly LodeplanDocument[]> {
  measure ??= measureWith(await fonts);
  return composeDocuments(worked, measure);
}

/** @param day shown nowhere, but written into the file; the same document and day give the same bytes */
export async function print(document: LodeplanDocument, day: Date): Promise<Blob> {
  const bytes = await writePdf(document, await fonts, { date: day });
  return new Blob([bytes as Uint8Array<ArrayBuffer>], { type: 'application/pdf' });
}
