import { composeDocuments } from '../../core/drawings/compose';
import { measureWith } from '../../core/drawings/fonts';
import { writePdf } from '../../core/drawings/pdf';
import { demoJob } from '../../core/job/demo';
import { workOutFully } from '../../core/run/pipeline';
import { fontFiles } from '../drawings/font-files';
import { row, timed } from './print';

/** The PDF set of the demo: pages composed, and all of them written. */
export async function documentsBench(): Promise<void> {
  const worked = workOutFully(demoJob());
  const composed = timed(5, () => composeDocuments(worked, measureWith(fontFiles)));
  row('demo: pages composed', composed);
  const times: number[] = [];
  let bytes = 0;
  for (let i = 0; i < 5; i++) {
    const start = performance.now();
    bytes = 0;
    for (const document of composeDocuments(worked, measureWith(fontFiles))) {
      bytes += (await writePdf(document, fontFiles, { date: new Date(0) })).length;
    }
    times.push(performance.now() - start);
  }
  row('demo: PDF set composed and written', { times: times.sort((a, b) => a - b) });
  const pages = composed.value.reduce((sum, document) => sum + document.pages.length, 0);
  console.log(`    ${composed.value.length} documents, ${pages} pages, ${Math.round(bytes / 1024)} KiB`);
}
