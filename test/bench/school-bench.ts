import type { Job } from '../../core/job/schema';
import { workOut } from '../../core/run/pipeline';
import { percentile } from './print';
import { schoolJob } from './generated-jobs';
import { clocks } from './solve-instance';

/** Heap is looked at once in so many pauses. */
const PAUSES_BETWEEN_LOOKS = 16;

/** Processor time in ms. */
const now = () => 1000 * clocks.cpu();

/**
 * How processor time and memory grow with the number of walls, all of one delivery: to the first and the final result,
 * and the most that was held; then, in a run of its own since looking at the clock takes longer than most stretches
 * do, between pauses (what a newer request would have to wait for).
 */
export async function schoolBench(): Promise<void> {
  let last: { panels: number; final: number } | undefined;
  for (const walls of [30, 60, 120, 240]) {
    const job = schoolJob(walls);
    globalThis.gc?.();
    const { first, final, heap, process: peak, panels, cutting } = timeWork(job);
    const { firstSheets, newSheets, lowerBound, leastPossible } = cutting;
    const pauses = timePauses(job);
    const gap = leastPossible ? 'proved' : `${(100 * (newSheets / lowerBound - 1)).toFixed(2)} % above`;
    const pause = (share: number) => percentile(pauses, share).toFixed(1);
    const growth = last
      ? `; per n log n ${(cost(final, panels) / cost(last.final, last.panels)).toFixed(2)} × the one before`
      : '';
    console.log(
      `${walls} walls, ${panels} panels, ms of the processor: first ${first.toFixed(0)} (${firstSheets} sheets), ` +
        `final ${final.toFixed(0)} (${newSheets} sheets, bound ${lowerBound}, ${gap})${growth}; ` +
        `between pauses p50 ${pause(0.5)}, p99 ${pause(0.99)}, most ${pauses.at(-1)!.toFixed(1)} of ${pauses.length}; ` +
        `heap at most ${(heap / 1e6).toFixed(0)} MB, process ${(peak / 1000).toFixed(0)} MB`,
    );
    last = { panels, final };
  }
}

function timeWork(job: Job) {
  let heap = 0;
  let first = 0;
  let firstSheets = 0;
  let pauses = 0;
  const work = workOut(job);
  const start = now();
  for (;;) {
    const { value, done } = work.next();
    if (value && first === 0) {
      first = now() - start;
      firstSheets = value.cutting.newSheets;
    }
    if (++pauses % PAUSES_BETWEEN_LOOKS === 0) heap = Math.max(heap, process.memoryUsage().heapUsed);
    if (!done) continue;
    const final = now() - start;
    const panels = value.walls.reduce(
      (sum, { zones }) => sum + zones.reduce((own, { layout }) => own + (layout?.panels.length ?? 0), 0),
      0,
    );
    const { newSheets, lowerBound, leastPossible } = value.cutting;
    const cutting = { firstSheets, newSheets, lowerBound, leastPossible };
    return { first, final, heap, process: process.resourceUsage().maxRSS, panels, cutting };
  }
}

/** Ascending. */
function timePauses(job: Job): number[] {
  const pauses: number[] = [];
  const work = workOut(job);
  for (let done = false; !done;) {
    const since = now();
    done = work.next().done === true;
    pauses.push(now() - since);
  }
  return pauses.sort((a, b) => a - b);
}

function cost(ms: number, panels: number): number {
  return ms / (panels * Math.log(panels));
}
