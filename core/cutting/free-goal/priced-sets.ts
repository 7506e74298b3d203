import type { PooledSet } from '../pool/set-pool';
import type { Fits } from './fits';
import type { FreeTask } from './free-task';

/** Work of one step, in trials; about a millisecond or two. */
const STEP_WORK = 8_000;
/** Work on one set before the next has its turn. */
const SET_WORK = 1_500;
/** What is worth less more counts as nothing; a sheet costs about 1. */
const LEAST = 1e-6;

/**
 * Makes sets that are worth more than what they cost out of those a linear program over all known sets takes: panels
 * that are cheap to cover otherwise give way to dear ones as long as all still fit on the sheet.
 *
 * Source: column generation, whose pricing is here a local search; P. C. Gilmore, R. E. Gomory, A linear programming
 * approach to the cutting-stock problem, Operations Research 9 (1961), from memory.
 */
export class PricedSets {
  private readonly set: Int32Array;
  private readonly trial: Int32Array;
  private readonly counts: Int32Array;
  private readonly most: Int32Array;
  private until = 0;

  constructor(
    private readonly task: FreeTask,
    private readonly fits: Fits,
  ) {
    this.set = new Int32Array(task.panelCount + 1);
    this.trial = new Int32Array(task.panelCount + 1);
    this.counts = new Int32Array(task.kinds.length);
    this.most = Int32Array.from(task.nestTask.kinds, ({ members }) => members.length);
  }

  /**
   * One round; what is found goes into the pool that `fits` feeds.
   *
   * @param sets to begin from
   * @param prices by number of kind
   */
  *round(sets: readonly PooledSet[], prices: Float64Array): Generator<undefined, void, void> {
    for (const set of sets) yield* this.climb(set, prices);
  }

  /** Takes the exchange that gains most and fits, again and again. */
  private *climb(start: PooledSet, prices: Float64Array): Generator<undefined, void, void> {
    const { task, fits, set, counts } = this;
    const format = task.formats.findIndex(({ stock, rack }) => stock === start.stock && rack === start.rack);
    if (format < 0) return;
    let count = start.kinds.length;
    set.set(start.kinds);
    counts.fill(0);
    for (const kind of start.kinds) counts[kind]!++;
    const end = fits.work + SET_WORK;
    while (fits.work < end) {
      const found = yield* this.exchange(format, count, prices, end);
      if (!found) return;
      const [out, kind] = found;
      if (out < 0) set[count++] = kind;
      else {
        counts[set[out]!]!--;
        set[out] = kind;
      }
      counts[kind]!++;
    }
  }

  private *exchange(
    format: number,
    count: number,
    prices: Float64Array,
    end: number,
  ): Generator<undefined, readonly [number, number] | null, void> {
    const { task, set, counts, most, fits } = this;
    let room = task.formats[format]!.area;
    for (let i = 0; i < count; i++) room -= task.area[set[i]!]!;
    const moves: Move[] = [];
    for (let kind = 0; kind < task.kinds.length; kind++) {
      if (counts[kind] === most[kind] || task.allowed[kind * task.formats.length + format] === 0) continue;
      for (let i = -1; i < count; i++) {
        const gain = prices[kind]! - (i < 0 ? 0 : prices[set[i]!]!);
        if (gain < LEAST || room + (i < 0 ? 0 : task.area[set[i]!]!) < task.area[kind]!) continue;
        moves.push([gain, i, kind]);
      }
    }
    moves.sort((a, b) => b[0] - a[0]);
    fits.work += moves.length / 4;
    for (const [, out, kind] of moves) {
      if (this.stillFit(format, count, out, kind)) return [out, kind];
      if (fits.work >= this.until) {
        yield undefined;
        this.until = fits.work + STEP_WORK;
      }
      if (fits.work >= end) return null;
    }
    return null;
  }

  private stillFit(format: number, count: number, out: number, kind: number): boolean {
    const { fits, set, trial } = this;
    let low = fits.low(format) + fits.codeLow[kind]!;
    let high = fits.high(format) + fits.codeHigh[kind]!;
    let size = 0;
    for (let i = 0; i < count; i++) {
      if (i === out) continue;
      const own = set[i]!;
      trial[size++] = own;
      low += fits.codeLow[own]!;
      high += fits.codeHigh[own]!;
    }
    trial[size++] = kind;
    return fits.fits(format, trial, size, low | 0, high | 0);
  }
}

type Move = readonly [gain: number, out: number, kind: number];
