import { workOut } from '../../core/run/pipeline';
import { percentile } from './print';
import { schoolJob } from './generated-jobs';
import { clocks } from './solve-instance';

/** Heap is looked at once in so many pauses. */
const PAUSES_BETWEEN_LOOKS = 16;

/**
 * How processor time and memory grow with the number of walls, all of one delivery: to the first and the final result,
 * between pauses (what a newer request would have to wait for), and the most that was held.
 */
export async function schoolBench(): Promise<void> {
  const now = () => 1000 * clocks.cpu();
  let last: { panels: number; final: number } | undefined;
  for (const walls of [30, 60, 120, 240]) {
    const job = schoolJob(walls);
    globalThis.gc?.();
    const pauses: number[] = [];
    let heap = 0;
    let first: { ms: number; sheets: number } | undefined;
    const work = workOut(job);
    const start = now();
    let since = start;
    let next = work.next();
    for (; !next.done; next = work.next()) {
      const at = now();
      pauses.push(at - since);
      if (pauses.length % PAUSES_BETWEEN_LOOKS === 0) heap = Math.max(heap, process.memoryUsage().heapUsed);
      if (next.value) first ??= { ms: at - start, sheets: next.value.cutting.newSheets };
      since = now();
    }
    const final = now() - start;
    pauses.push(now() - since);
    pauses.sort((a, b) => a - b);
    const { cutting, walls: worked } = next.value;
    const { newSheets, lowerBound, leastPossible } = cutting;
    const panels = worked.reduce(
      (sum, { zones }) => sum + zones.reduce((own, { layout }) => own + (layout?.panels.length ?? 0), 0),
      0,
    );
    const gap = leastPossible ? 'proved' : `${(100 * (newSheets / lowerBound - 1)).toFixed(2)} % above`;
    const pause = (share: number) => percentile(pauses, share).toFixed(1);
    const growth = last
      ? `; per n log n ${(cost(final, panels) / cost(last.final, last.panels)).toFixed(2)} × the one before`
      : '';
    console.log(
      `${walls} walls, ${panels} panels, ms of the processor: first ${first!.ms.toFixed(0)} (${first!.sheets} sheets), ` +
        `final ${final.toFixed(0)} (${newSheets} sheets, bound ${lowerBound}, ${gap})${growth}; ` +
        `between pauses p50 ${pause(0.5)}, p99 ${pause(0.99)}, most ${pauses.at(-1)!.toFixed(1)} of ${pauses.length}; ` +
        `heap at most ${(heap / 1e6).toFixed(0)} MB, process ${(process.resourceUsage().maxRSS / 1000).toFixed(0)} MB`,
    );
    last = { panels, final };
  }
}

function cost(ms: number, panels: number): number {
  return ms / (panels * Math.log(panels));
}
