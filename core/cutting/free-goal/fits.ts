import type { FilledPlace, FilledSheet } from '../fill-sheet';
import type { NestedSheet } from '../nest';
import type { SetPool } from '../pool/set-pool';
import { Fill, type FillScore } from './fill';
import { formatOf, type FreeTask } from './free-task';
import { MOST_RECTANGLES, Skyline } from './skyline';

const YES = 1;
const NO = 2;
/** Not found; with the patience added. */
const PERHAPS = 3;
const MOST_PATIENCE = 6;
/** Answers kept; a power of two. */
const CACHE_SIZE = 1 << 17;
/** Trials after which a set of rectangles is given up at first; sets that fit mostly show it within a few dozen. */
const FIRST_TRIALS = 60;
/** Work after which patience grows for the first time; each further time takes twice as much. */
const FIRST_PATIENCE = 1.5e6;
/** Sets of fewer rectangles are left to the skyline alone. */
const FILL_FROM = 7;
/** Shuffled orders tried beside the plain ones. */
const SHUFFLES = 2;

const scores: readonly FillScore[] = ['contact', 'short-side', 'contact', 'bottom-left'];

/**
 * Whether a set of panels fits on a sheet of a format, as far as trying shows: a yes is sure, a no may be wrong for
 * many panels. Equal sets get equal answers; answers are kept by the set's sum of random codes.
 */
export class Fits {
  readonly codeLow: Int32Array;
  readonly codeHigh: Int32Array;
  /** Trials so far, ever. */
  work = 0;
  /** By position, largest kind first. */
  private readonly rank: Int32Array;
  private readonly skyline: Skyline;
  private readonly fill: Fill;
  private readonly keys = new Int32Array(2 * CACHE_SIZE);
  private readonly answers = new Uint8Array(CACHE_SIZE);
  private readonly sorted: Int32Array;
  private readonly shuffled: Int32Array;
  /** Each degree doubles the trials a set is given; sets not found before are tried again. */
  private patience = 0;
  private nextPatience = FIRST_PATIENCE;
  private isSure = true;
  private readonly known = new Map<string, FilledSheet>();

  constructor(
    private readonly task: FreeTask,
    start: readonly NestedSheet[],
    random: () => number,
    private readonly pool?: SetPool,
  ) {
    const { kinds, kerf, panelCount, long, short, formats } = task;
    const codes = () => Int32Array.from({ length: kinds.length + formats.length }, () => random() * 2 ** 32);
    this.codeLow = codes();
    this.codeHigh = codes();
    const order = kinds.map((_, k) => k);
    order.sort((a, b) => long[b]! * short[b]! - long[a]! * short[a]! || a - b);
    this.rank = new Int32Array(kinds.length);
    order.forEach((kind, place) => (this.rank[kind] = place));
    this.skyline = new Skyline(long, short);
    this.fill = new Fill(kinds, kerf, panelCount);
    this.sorted = new Int32Array(panelCount);
    this.shuffled = new Int32Array(panelCount);
    for (const sheet of start) {
      const set = Int32Array.from(sheet.filled.places, ({ kind }) => kind);
      this.known.set(this.nameOf(formatOf(task, sheet), set, set.length), sheet.filled);
    }
  }

  /** Sums of codes of an empty sheet of the format. */
  low(format: number): number {
    return this.codeLow[this.task.kinds.length + format]!;
  }

  high(format: number): number {
    return this.codeHigh[this.task.kinds.length + format]!;
  }

  /** @param low, high sums of the codes of format and panels, as whole numbers of 32 bits */
  fits(format: number, set: Int32Array, count: number, low: number, high: number): boolean {
    const at = (low ^ (high >>> 7)) & (CACHE_SIZE - 1);
    const answer = this.answers[at]!;
    if (this.keys[2 * at] === low && this.keys[2 * at + 1] === high) {
      if (answer === YES) return true;
      if (answer === NO || answer === PERHAPS + this.patience) return false;
    }
    if (this.work > this.nextPatience) {
      this.nextPatience *= 2;
      if (this.patience < MOST_PATIENCE) this.patience++;
    }
    this.isSure = true;
    const yes = this.find(format, set, count, false) !== 'no';
    if (yes && this.pool) {
      this.pool.add(this.task.formats[format]!, set.slice(0, count), (kinds) => {
        const { stock, rack } = this.task.formats[format]!;
        return { stock, rack, filled: this.layOut(format, kinds, kinds.length) };
      });
    }
    this.keys[2 * at] = low;
    this.keys[2 * at + 1] = high;
    this.answers[at] = yes ? YES : this.isSure ? NO : PERHAPS + this.patience;
    return yes;
  }

  /** The places of a set that fits. */
  layOut(format: number, set: Int32Array, count: number): FilledSheet {
    const how = this.find(format, set, count, true);
    if (how === 'no') throw new Error('A set of panels that has been found to fit does not.');
    if (how === 'known') return this.known.get(this.nameOf(format, set, count))!;
    const { kinds, kerf, long, short } = this.task;
    const places: FilledPlace[] = [];
    let area = 0;
    for (let i = 0; i < count; i++) {
      if (how === 'fill') {
        const kind = this.shuffled[i]!;
        places.push({ kind, pose: this.fill.pose[i]!, x: this.fill.x[i]!, y: this.fill.y[i]!, space: 0 });
        area += kinds[kind]!.area;
      } else {
        const { places: found } = this.skyline;
        const kind = found.kind[i]!;
        const width = (found.way[i] === 0 ? long[kind]! : short[kind]!) - kerf;
        const pose = kinds[kind]!.poses.findIndex((other) => other.width === width);
        places.push({ kind, pose, x: found.x[i]!, y: found.y[i]!, space: 0 });
        area += kinds[kind]!.area;
      }
    }
    return { places, spaces: [], area };
  }

  /**
   * @param again whether the set has been found to fit before: a fill may have shown it while the skyline was broken off,
   *   which now looks at everything and misses it; and its trials, counted in fractions, round differently later
   */
  private find(
    format: number,
    set: Int32Array,
    count: number,
    again: boolean,
  ): 'skyline' | 'fill' | 'known' | 'no' {
    const { task, sorted, rank, skyline, fill } = this;
    const { width, height, area } = task.formats[format]!;
    let spare = area;
    let onlyRectangles = true;
    this.work += 4;
    for (let i = 0; i < count; i++) {
      const kind = set[i]!;
      spare -= task.long[kind]! * task.short[kind]!;
      if (task.isRectangle[kind] === 0) onlyRectangles = false;
      let to = i;
      for (; to > 0 && rank[sorted[to - 1]!]! > rank[kind]!; to--) sorted[to] = sorted[to - 1]!;
      sorted[to] = kind;
    }
    if (onlyRectangles && (spare < 0 || !this.allPairsFit(count, width, height)))
      return this.knownOr(format, set, count);
    if (spare >= 0 && count <= MOST_RECTANGLES) {
      const before = skyline.work;
      const trials = FIRST_TRIALS << (again ? this.patience + 1 : this.patience);
      const found = skyline.fit(sorted, count, width, height, spare, trials);
      this.work += skyline.work - before;
      if (found) return 'skyline';
      if (skyline.brokeOff) this.isSure = false;
      if (onlyRectangles && !skyline.brokeOff && !again) return this.knownOr(format, set, count);
    }
    if (!onlyRectangles || count >= FILL_FROM) {
      this.isSure = false;
      const before = fill.work;
      const found = this.tryFill(count, width, height);
      this.work += (fill.work - before) / 2;
      if (found) return 'fill';
    }
    return this.knownOr(format, set, count);
  }

  private knownOr(format: number, set: Int32Array, count: number): 'known' | 'no' {
    return this.known.has(this.nameOf(format, set, count)) ? 'known' : 'no';
  }

  private allPairsFit(count: number, width: number, height: number): boolean {
    const { long, short } = this.task;
    const side = width > height ? width : height;
    const other = width > height ? height : width;
    for (let i = 1; i < count; i++) {
      const a = this.sorted[i]!;
      for (let j = 0; j < i; j++) {
        const b = this.sorted[j]!;
        // Beside each other along a side of the sheet, each as it takes least of it and still fits across.
        const along = (kind: number, across: number) => (long[kind]! <= across ? short[kind]! : long[kind]!);
        if (along(a, other) + along(b, other) > side && along(a, side) + along(b, side) > other) return false;
      }
    }
    return true;
  }

  /** In a few orders: by size first, then shuffled the more, the later. */
  private tryFill(count: number, width: number, height: number): boolean {
    const { sorted, shuffled } = this;
    let state = 0x9e3779b9 ^ count;
    for (let i = 0; i < count; i++) state = Math.imul(state ^ sorted[i]!, 0x85ebca6b) | 1;
    for (let t = 0; t < scores.length + SHUFFLES; t++) {
      for (let i = 0; i < count; i++) shuffled[i] = sorted[i]!;
      if (t >= 2) {
        for (let s = 0; s < t; s++) {
          state ^= state << 13;
          state ^= state >>> 17;
          state ^= state << 5;
          const from = (state >>> 0) % count;
          const to = from >> 1;
          const moved = shuffled[from]!;
          shuffled.copyWithin(to + 1, to, from);
          shuffled[to] = moved;
        }
      }
      if (this.fill.place(shuffled, count, width, height, scores[t % scores.length]!)) return true;
    }
    return false;
  }

  private nameOf(format: number, set: Int32Array, count: number): string {
    return `${format}:${[...set.subarray(0, count)].sort((a, b) => a - b).join()}`;
  }
}
