import { workOut } from '../../core/run/pipeline';
import type { WorkedOut } from '../../core/worked-out';
import { schoolJob } from './generated-jobs';

/**
 * How time and memory grow with the number of walls, all of one delivery: time to the first and the final result,
 * the longest stretch without a pause (what a newer request would have to wait for), and the heap at the end.
 */
export async function schoolBench(): Promise<void> {
  let last: { walls: number; final: number } | undefined;
  for (const walls of [30, 60, 120, 240]) {
    const job = schoolJob(walls);
    globalThis.gc?.();
    const start = performance.now();
    let first = 0;
    let longest = 0;
    let since = start;
    let firstSheets = 0;
    let result: WorkedOut | undefined;
    const work = workOut(job);
    for (;;) {
      const { value, done } = work.next();
      const now = performance.now();
      longest = Math.max(longest, now - since);
      since = now;
      if (value) {
        if (!result) {
          first = now - start;
          firstSheets = value.cutting.newSheets;
        }
        result = value;
      }
      if (done) break;
    }
    const final = performance.now() - start;
    const { newSheets, lowerBound } = result!.cutting;
    const panels = result!.walls.reduce(
      (sum, { zones }) => sum + zones.reduce((own, { layout }) => own + (layout?.panels.length ?? 0), 0),
      0,
    );
    const growth = last
      ? `, ${(final / last.final).toFixed(2)} × the time for ${walls / last.walls} × the walls`
      : '';
    console.log(
      `${walls} walls, ${panels} panels: first ${first.toFixed(0)} ms (${firstSheets} sheets), final ${final.toFixed(0)} ms ` +
        `(${newSheets} sheets, bound ${lowerBound}, ${((newSheets / lowerBound - 1) * 100).toFixed(2)} % above), ` +
        `longest pause ${longest.toFixed(0)} ms, heap ${(process.memoryUsage().heapUsed / 1e6).toFixed(0)} MB, ` +
        `peak of the process ${(process.resourceUsage().maxRSS / 1000).toFixed(0)} MB${growth}`,
    );
    last = { walls, final };
  }
}
