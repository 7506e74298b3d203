import { composeDocuments } from '../../core/drawings/compose';
import { measureWith } from '../../core/drawings/fonts';
import { writePdf } from '../../core/drawings/pdf';
import { oneSet } from '../../core/drawings/set/one-set';
import { demoJob } from '../../core/job/demo';
import type { Job } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import { fontFiles } from '../drawings/font-files';
import { schoolJob } from './generated-jobs';
import { row, timed } from './print';

const rounds = 5;

/** The set of the demo and of a job of ten walls: pages composed, and all of them bound and written to one PDF. */
export async function documentsBench(): Promise<void> {
  await setBench('demo', demoJob());
  await setBench('10 walls', schoolJob(10));
}

async function setBench(name: string, job: Job): Promise<void> {
  const worked = workOutFully(job);
  const measure = measureWith(fontFiles);
  const composed = timed(rounds, () => composeDocuments(worked, measure));
  row(`${name}: pages composed`, composed);
  const times: number[] = [];
  let bytes = 0;
  for (let i = 0; i < rounds; i++) {
    const start = performance.now();
    const set = oneSet(worked, composeDocuments(worked, measureWith(fontFiles)), measure);
    bytes = (await writePdf(set, fontFiles, { date: new Date(0) })).length;
    times.push(performance.now() - start);
  }
  row(`${name}: set composed, bound and written`, { times: times.sort((a, b) => a - b) });
  const pages = composed.value.reduce((sum, document) => sum + document.pages.length, 0);
  console.log(`    ${composed.value.length} documents, ${pages} pages, ${Math.round(bytes / 1024)} KiB`);
}
