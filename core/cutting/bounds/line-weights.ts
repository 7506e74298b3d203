import { dualFeasibleFunctions } from '../dual-feasible';
import { waysToLie, type BoundSize, type Extent, type Visit } from '../weighings';
import { CoveringProgram } from './covering-program';
import { LineKnapsack } from './line-knapsack';

/*
 * Weights made for the panels at hand. As in `weighings.ts` a panel w × h weighs f(w) · g(h), where no line across
 * a stock sheet can hold more than F by f and none up it more than G by g. There f and g come from known families;
 * here, g given, the best f is a linear program over the patterns of lengths in a line: it is solved by column
 * generation, then f is held and g is improved, and so on until nothing gains.
 *
 * Why f · g holds at most F · G: along every vertical line panels count at most G, so, g being whole numbers, they
 * can be dealt out to G tracks in each of which no two lie beside the same vertical line (intervals are perfect);
 * the panels of one track fit side by side, so they count at most F. Therefore f and g may be any whole numbers at
 * all: F and G are worked out exactly by `LineKnapsack`, whatever the linear program made of them.
 *
 * Sources: S. P. Fekete, J. Schepers, A combinatorial characterization of higher-dimensional orthogonal packing,
 * Mathematics of Operations Research 29 (2004), for scales that are conservative for the panels at hand;
 * G. Belov, V. M. Kartak, H. Rohling, G. Scheithauer, One-dimensional relaxations and LP bounds for orthogonal
 * packing, International Transactions in Operational Research 16 (2009), for bars as a linear program. From memory.
 */

/** Weights are whole numbers up to this. */
const SCALE = 1 << 18;
/** More different lengths than this are rounded down to so many. */
const MOST_LENGTHS = 140;
/** Pairs of functions to begin with. */
const STARTS = 4;
const MOST_ROUNDS = 12;
const WORK_OF_A_STEP = 400_000;
/** Entries looked at in all; some seconds at most. */
const MOST_WORK = 400_000_000;
/** A pattern worth less than this more than its cost is not entered any more. */
const TOLERANCE = 1e-5;

export interface LineTask {
  readonly sizes: readonly BoundSize[];
  /** Every sheet there is, kerf included: the stock formats, then the rack. */
  readonly carriers: readonly Extent[];
  /** What each stock format counts as: 1 for a bound of their number, its price for one of the money. */
  readonly costs: readonly number[];
}

/**
 * Weighs the panels in ever better ways; see `weigh` for `visit`. Each `next()` is one bounded step; it ends by
 * itself, or when `visit` says stop.
 */
export function* improveWeights(task: LineTask, visit: Visit): Generator<void, void, void> {
  const sizes = thinned(task.sizes);
  if (sizes.length === 0 || task.costs.some((cost) => cost <= 0)) return;
  const search = new LineSearch(sizes, task);
  for (const base of task.carriers.slice(0, task.costs.length)) {
    const turns = base.width === base.height ? (['mean'] as const) : (['lesser', 'mean'] as const);
    for (const form of turns) {
      search.stand(form === 'lesser' ? base : null);
      const starts = yield* search.starts(base, form);
      for (const start of starts) {
        let g = start;
        let isAcross = true;
        let last = 0;
        for (let round = 0; round < MOST_ROUNDS; round++) {
          const f = yield* search.bestFor(g, isAcross, form);
          const [across, upright] = isAcross ? [f, g] : [g, f];
          const { total, most, rate } = search.weigh(across, upright, form);
          if (visit(total, most) === 'stop') return;
          if (rate <= last * (1 + 1e-5) || search.work > MOST_WORK) break;
          last = rate;
          g = f;
          isAcross = !isAcross;
        }
        if (search.work > MOST_WORK) return;
      }
    }
  }
}

/** 'mean': of both ways round; 'lesser': of the ways in which it fits. */
type Form = 'mean' | 'lesser';
type Weights = Float64Array;

class LineSearch {
  work = 0;
  private readonly lengths: number[];
  /** By size, the numbers of its width and height among the lengths. */
  private readonly wide: Int32Array;
  private readonly high: Int32Array;
  private readonly counts: Float64Array;
  private readonly knapsack: LineKnapsack;
  private readonly limits: number[];
  private readonly costs: readonly number[];
  private carriers: readonly Extent[];
  private ways: Uint8Array;

  constructor(
    private readonly sizes: readonly BoundSize[],
    private readonly task: LineTask,
  ) {
    this.lengths = [...new Set(sizes.flatMap(({ width, height }) => [width, height]))].sort((a, b) => a - b);
    const at = new Map(this.lengths.map((length, i) => [length, i]));
    this.wide = Int32Array.from(sizes, ({ width }) => at.get(width)!);
    this.high = Int32Array.from(sizes, ({ height }) => at.get(height)!);
    this.counts = Float64Array.from(sizes, ({ count }) => count);
    this.limits = this.lengths.map((length) =>
      sizes.reduce(
        (sum, { width, height, count }) => sum + (width === length || height === length ? count : 0),
        0,
      ),
    );
    this.costs = task.costs;
    this.carriers = task.carriers;
    const longest = Math.max(...task.carriers.flatMap(({ width, height }) => [width, height]));
    this.knapsack = new LineKnapsack(this.lengths, this.limits, longest);
    this.ways = waysToLie(sizes, this.carriers);
  }

  /** Turns the sheets so that they stand like this one; null: as they come. */
  stand(base: Extent | null): void {
    this.carriers = this.task.carriers.map((carrier) => {
      const { width, height } = carrier;
      return base && base.width < base.height !== width < height ? { width: height, height: width } : carrier;
    });
    this.ways = waysToLie(this.sizes, this.carriers);
  }

  /** The functions up a sheet that do best with another across it, the best first. */
  *starts({ width, height }: Extent, form: Form): Generator<void, Weights[], void> {
    const table = (length: number) =>
      dualFeasibleFunctions(length, this.lengths).map(({ at }) =>
        Float64Array.from(this.lengths, (x) => at(Math.min(x, length)) / at(length)),
      );
    const across = table(width);
    const upright = table(height);
    const ranked: { g: Weights; worth: number }[] = [];
    for (const g of upright) {
      let worth = 0;
      for (const f of across) worth = Math.max(worth, this.total(f, g, form));
      ranked.push({ g, worth });
      yield* this.count(across.length * this.sizes.length * 4);
    }
    ranked.sort((a, b) => b.worth - a.worth);
    return ranked.slice(0, STARTS).map(({ g }) => whole(g));
  }

  /** @param isAcross f counts across, g upright; false: the other way about */
  *bestFor(g: Weights, isAcross: boolean, form: Form): Generator<void, Weights, void> {
    const { lengths, knapsack } = this;
    const worth = this.worthOfLengths(g, isAcross, form);
    const rows = lengths.flatMap((_, i) => (worth[i]! > 0 ? [i] : []));
    const f = new Float64Array(lengths.length);
    if (rows.length === 0) return f;
    const lines = this.linesFor(g, isAcross, form);
    const start = rows.map((i) => {
      let yields = 0;
      let cost = 1;
      for (const line of lines) {
        let own = 0;
        for (const { length, factor } of line.parts)
          own += factor * Math.min(this.limits[i]!, Math.floor(length / lengths[i]!));
        if (own / line.cost > yields / cost) [yields, cost] = [own, line.cost];
      }
      return { yields, cost };
    });
    // A length that fits in no stock format lies on the rack only; here it counts nothing.
    const kept = rows.filter((_, i) => start[i]!.yields > 0);
    const first = start.filter(({ yields }) => yields > 0);
    const program = new CoveringProgram(
      kept.map((i) => worth[i]!),
      first.map(({ yields }) => yields),
      first.map(({ cost }) => cost),
    );
    const counts = new Float64Array(lengths.length);
    for (let turn = 0; turn < 40 * kept.length; turn++) {
      program.settle();
      kept.forEach((i, row) => (f[i] = Math.max(0, program.prices[row]!)));
      knapsack.fill(f);
      yield* this.count(2 * knapsack.work + kept.length * kept.length);
      let best: Line | undefined;
      let gain = 1 + TOLERANCE;
      for (const line of lines) {
        let own = 0;
        for (const { length, factor } of line.parts) own += factor * knapsack.most(length);
        if (own / line.cost > gain) [best, gain] = [line, own / line.cost];
      }
      if (!best || this.work > MOST_WORK) break;
      counts.fill(0);
      for (const { length, factor } of best.parts) knapsack.addPattern(length, factor, counts);
      if (
        !program.enter(
          Float64Array.from(kept, (i) => counts[i]!),
          best.cost,
        )
      )
        break;
    }
    return whole(f);
  }

  /** What all panels weigh together, the most that every sheet can hold, and what that says at least. */
  weigh(f: Weights, g: Weights, form: Form): { total: number; most: number[]; rate: number } {
    const { knapsack } = this;
    const lines = this.carriers.flatMap(({ width, height }) => [width, height]);
    knapsack.fill(f);
    const byF = lines.map((line) => knapsack.most(line));
    knapsack.fill(g);
    const byG = lines.map((line) => knapsack.most(line));
    this.work += 4 * knapsack.work;
    const most = this.carriers.map((_, c) =>
      form === 'mean'
        ? (byF[2 * c]! * byG[2 * c + 1]! + byF[2 * c + 1]! * byG[2 * c]!) / 2
        : byF[2 * c]! * byG[2 * c + 1]!,
    );
    const total = this.total(f, g, form);
    const rate = total / Math.max(1, ...this.costs.map((cost, c) => most[c]! / cost));
    return { total, most, rate };
  }

  private total(f: Weights, g: Weights, form: Form): number {
    const { wide, high, counts, ways } = this;
    let total = 0;
    for (let s = 0; s < counts.length; s++) {
      const lying = f[wide[s]!]! * g[high[s]!]!;
      const standing = f[high[s]!]! * g[wide[s]!]!;
      if (form === 'mean') total += (counts[s]! * (lying + standing)) / 2;
      else if (ways[s] === 3) total += counts[s]! * Math.min(lying, standing);
      else if (ways[s] !== 0) total += counts[s]! * (ways[s] === 1 ? lying : standing);
    }
    return total;
  }

  /** How much each length gains the total by; a panel that may lie both ways counts half for each. */
  private worthOfLengths(g: Weights, isAcross: boolean, form: Form): Float64Array {
    const { wide, high, counts, ways } = this;
    const worth = new Float64Array(this.lengths.length);
    for (let s = 0; s < counts.length; s++) {
      const way = form === 'mean' ? 3 : ways[s]!;
      const share = (counts[s]! * (way === 3 ? 0.5 : 1)) / SCALE;
      // Lying, its width is across and its height upright.
      if (way & 1) worth[isAcross ? wide[s]! : high[s]!]! += share * g[isAcross ? high[s]! : wide[s]!]!;
      if (way & 2) worth[isAcross ? high[s]! : wide[s]!]! += share * g[isAcross ? wide[s]! : high[s]!]!;
    }
    return worth;
  }

  /** What a sheet of each format is made of, as lines for f, each as often as g says. */
  private linesFor(g: Weights, isAcross: boolean, form: Form): Line[] {
    this.knapsack.fill(g);
    this.work += this.knapsack.work;
    return this.costs.map((cost, c) => {
      const { width, height } = this.carriers[c]!;
      const [along, over] = isAcross ? [width, height] : [height, width];
      const most = (length: number) => this.knapsack.most(length) / SCALE;
      const parts =
        form === 'mean'
          ? [
              { length: along, factor: most(over) / 2 },
              { length: over, factor: most(along) / 2 },
            ]
          : [{ length: along, factor: most(over) }];
      return { cost, parts };
    });
  }

  private *count(work: number): Generator<void, void, void> {
    const before = Math.floor(this.work / WORK_OF_A_STEP);
    this.work += work;
    if (Math.floor(this.work / WORK_OF_A_STEP) > before) yield;
  }
}

interface Line {
  readonly cost: number;
  readonly parts: readonly { readonly length: number; readonly factor: number }[];
}

/** Whole numbers, the largest of them SCALE. */
function whole(weights: Weights): Weights {
  const largest = weights.reduce((a, b) => Math.max(a, b), 0);
  return largest > 0 ? weights.map((weight) => Math.floor((weight / largest) * SCALE)) : weights;
}

/** Sizes rounded down until few enough lengths are left, equal ones put together. */
function thinned(sizes: readonly BoundSize[]): BoundSize[] {
  const lengths = [...new Set(sizes.flatMap(({ width, height }) => [width, height]))].sort((a, b) => a - b);
  const kept =
    lengths.length <= MOST_LENGTHS
      ? lengths
      : Array.from(
          { length: MOST_LENGTHS },
          (_, i) => lengths[Math.floor((i * lengths.length) / MOST_LENGTHS)]!,
        );
  const down = new Map<number, number>();
  let k = 0;
  for (const length of lengths) {
    while (k + 1 < kept.length && kept[k + 1]! <= length) k++;
    down.set(length, kept[k]!);
  }
  const merged = new Map<string, BoundSize>();
  for (const { width, height, count } of sizes) {
    const [a, b] = [down.get(width)!, down.get(height)!];
    const [long, short] = a >= b ? [a, b] : [b, a];
    const key = `${long}×${short}`;
    merged.set(key, { width: long, height: short, count: count + (merged.get(key)?.count ?? 0) });
  }
  return [...merged.values()];
}
