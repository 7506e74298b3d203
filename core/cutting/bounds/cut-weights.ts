import type { Visit } from '../weighings';
import { CoveringProgram } from './covering-program';
import { CutKnapsack } from './cut-knapsack';
import type { LineTask } from './line-weights';

/*
 * Weights made for the panels at hand where everything is cut edge to edge. A sheet carries at most what `CutKnapsack`
 * can cut from it, so weights may be any at all; the best are the prices of the linear program that covers the panels by
 * patterns, in which a panel may turn up in one pattern more often than there are such panels. Every round of column
 * generation gives a bound of its own, as in A. A. Farley, A note on bounding a class of linear programming problems,
 * including cutting stock problems, Operations Research 38 (1990). Patterns are looked for at prices between the
 * program's and those of the best bound so far, which needs far fewer of them: P. Wentges, Weighted Dantzig–Wolfe
 * decomposition for linear mixed-integer programming, International Transactions in Operational Research 4 (1997).
 * Both from memory.
 */

/** Weights are whole numbers, with so many to a stock sheet's price. */
const SCALE = 1 << 24;
const WORK_OF_A_STEP = 400_000;
/** Entries looked at in all; some seconds at most. */
const MOST_WORK = 400_000_000;
const TOLERANCE = 1e-6;
/** Share of the best prices so far in those that a pattern is looked for by; less where none comes of it. */
const HOLD = 0.85;
const LEAST_HOLD = 0.2;

/**
 * Weighs the panels in ever better ways; see `weigh` for `visit`. Each `next()` is one bounded step; it ends by itself,
 * when `visit` says stop, or when nothing above `known` can come of it, as long as stock is not scarce.
 *
 * @param task of panels that come out as rectangles, and with nothing else beside them on the sheets
 * @param known the least sum of `costs` that is sure already
 * @returns whether no weights of any kind can say more
 */
export function* improveCutWeights(
  { sizes, carriers, costs }: LineTask,
  visit: Visit,
  known: () => number,
): Generator<void, boolean, void> {
  if (sizes.length === 0 || costs.some((cost) => cost <= 0)) return false;
  const program = programFor({ sizes, carriers, costs });
  if (!program) return false;
  const knapsack = new CutKnapsack(sizes, carriers);
  const formats = carriers.slice(0, costs.length);
  // The program knows of no rack.
  const isFinal = knapsack.isExact && formats.length === carriers.length;
  const best = { prices: new Float64Array(sizes.length), rate: 0 };
  const weights = new Float64Array(sizes.length);
  let hold = 0;
  let work = 0;
  for (let all = 0; all < MOST_WORK;) {
    program.settle();
    // No weights say more than the program comes to in the end, and it only falls.
    if (program.value <= known() + TOLERANCE) return isFinal;
    for (let s = 0; s < weights.length; s++) {
      const price = hold * best.prices[s]! + (1 - hold) * Math.max(0, program.prices[s]!);
      weights[s] = Math.floor(price * SCALE);
    }
    for (const own of knapsack.fill(weights)) {
      work += own;
      if (work < WORK_OF_A_STEP) continue;
      all += work;
      work = 0;
      yield;
    }
    work += sizes.length ** 2;
    const total = sizes.reduce((sum, { count }, s) => sum + count * weights[s]!, 0);
    const most = carriers.map((carrier) => knapsack.most(carrier));
    if (visit(total, most) === 'stop') return true;
    let [fullest, gain] = [0, 0];
    formats.forEach((_, c) => {
      const own = most[c]! / SCALE / costs[c]!;
      if (own > gain) [fullest, gain] = [c, own];
    });
    const rate = total / SCALE / gain;
    const isBetter = rate > best.rate;
    if (isBetter) {
      best.rate = rate;
      weights.forEach((weight, s) => (best.prices[s] = weight / SCALE / gain));
    }
    if (program.enter(knapsack.pattern(formats[fullest]!), costs[fullest]!)) hold = HOLD;
    else if (hold > 0) hold = isBetter ? hold : hold > LEAST_HOLD ? hold / 2 : 0;
    else return isFinal;
  }
  return false;
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
