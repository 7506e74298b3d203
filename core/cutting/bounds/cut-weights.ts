import type { Visit } from '../weighings';
import { CoveringProgram } from './covering-program';
import { CutKnapsack } from './cut-knapsack';
import type { LineTask } from './line-weights';

/*
 * Weights made for the panels at hand where everything is cut edge to edge. A sheet carries at most what `CutKnapsack`
 * can cut from it, so weights may be any at all; the best are the prices of the linear program that covers the panels by
 * patterns, in which a panel may turn up in one pattern more often than there are such panels. Every round of column
 * generation gives a bound of its own, as in A. A. Farley, A note on bounding a class of linear programming problems,
 * including cutting stock problems, Operations Research 38 (1990); from memory.
 */

/** Weights are whole numbers, with so many to a stock sheet's price. */
const SCALE = 1 << 24;
const WORK_OF_A_STEP = 400_000;
/** Entries looked at in all; some seconds at most. */
const MOST_WORK = 400_000_000;
const TOLERANCE = 1e-6;

/**
 * Weighs the panels in ever better ways; see `weigh` for `visit`. Each `next()` is one bounded step; it ends by itself,
 * or when `visit` says stop.
 *
 * @param task rectangles only, and nothing but rectangles beside them on the sheets
 */
export function* improveCutWeights(
  { sizes, carriers, costs }: LineTask,
  visit: Visit,
): Generator<void, void, void> {
  if (sizes.length === 0 || costs.some((cost) => cost <= 0)) return;
  const formats = carriers.slice(0, costs.length);
  const knapsack = new CutKnapsack(sizes, carriers);
  const program = programFor({ sizes, carriers, costs });
  if (!program) return;
  const weights = new Float64Array(sizes.length);
  let work = 0;
  for (let all = 0; all < MOST_WORK;) {
    program.settle();
    for (let s = 0; s < weights.length; s++) weights[s] = Math.floor(Math.max(0, program.prices[s]!) * SCALE);
    for (const own of knapsack.fill(weights)) {
      work += own;
      if (work < WORK_OF_A_STEP) continue;
      all += work;
      work = 0;
      yield;
    }
    work += sizes.length ** 2;
    const total = sizes.reduce((sum, { count }, s) => sum + count * weights[s]!, 0);
    if (
      visit(
        total,
        carriers.map((carrier) => knapsack.most(carrier)),
      ) === 'stop'
    )
      return;
    let best = 0;
    let gain = 0;
    formats.forEach((format, c) => {
      const own = knapsack.most(format) / SCALE / costs[c]!;
      if (own > gain) [best, gain] = [c, own];
    });
    if (gain <= 1 + TOLERANCE || !program.enter(knapsack.pattern(formats[best]!), costs[best]!)) return;
  }
}

/** Begins with sheets that hold one size alone, side by side; undefined where a size fits no format. */
function programFor({ sizes, carriers, costs }: LineTask): CoveringProgram | undefined {
  const yields = new Float64Array(sizes.length);
  const starts = new Float64Array(sizes.length);
  sizes.forEach((size, s) => {
    let rate = 0;
    costs.forEach((cost, c) => {
      const { width, height } = carriers[c]!;
      const count = Math.max(
        Math.floor(width / size.width) * Math.floor(height / size.height),
        Math.floor(width / size.height) * Math.floor(height / size.width),
      );
      if (count / cost <= rate) return;
      rate = count / cost;
      yields[s] = count;
      starts[s] = cost;
    });
  });
  if (yields.some((count) => count === 0)) return undefined;
  return new CoveringProgram(
    sizes.map(({ count }) => count),
    yields,
    starts,
  );
}
