import { sumsUpTo } from '../bounds/cut-knapsack';
import type { FilledPlace } from '../fill-sheet';
import type { NestTask } from '../nest';

/** Panels looked at in one filling. */
const MOST_ITEMS = 128;
/** Words of 32 bits that say which of them a piece holds. */
const WORDS = 4;
/** Different sets of panels remembered of a piece. */
const LABELS = 2;
/** Sheets handed out after one filling. */
const MOST_SHEETS = 60;

/** A stock sheet that can be cut edge to edge. */
export interface PricedSheet {
  readonly stock: number;
  readonly places: readonly FilledPlace[];
  /** A number a panel. */
  readonly kinds: readonly number[];
}

/** A piece joined of two labels; see the fields of the same names. */
interface Joined {
  readonly stock: number;
  readonly rate: number;
  readonly a: number;
  readonly b: number;
  readonly cut: number;
  readonly turned: number;
}

/**
 * Stock sheets whose panels are worth more than the sheet costs, every panel at most once: for every piece as long and as
 * broad as sums of sides, the sets of panels worth most that were found, each joined of those of two smaller pieces that
 * hold different panels. Not exact, as of a piece only some sets are remembered; what it finds is sound.
 *
 * Source: the table over sums of sides as in `bounds/cut-knapsack.ts`; the sets are our own.
 */
export class PricedSheets {
  /** Entries looked at, ever. */
  work = 0;
  private readonly points: readonly number[];
  private readonly rest: Int16Array;
  private readonly half: Int16Array;
  private readonly formats: readonly (readonly [number, number])[];
  private readonly sides: readonly (readonly [number, number])[];
  /** LABELS entries a piece, the best first; −1 worth: none. */
  private readonly worth: Float64Array;
  private readonly sets: Int32Array;
  /** Label of either part, or −1 − item for a panel. */
  private readonly partA: Int32Array;
  private readonly partB: Int32Array;
  /** Point at which the second part begins, 2 × and 1 more where it lies above the first. */
  private readonly cut: Int16Array;
  /** 1: first part is turned, 2: second. */
  private readonly turned: Uint8Array;
  /** Kind of each item. */
  private items: number[] = [];

  /**
   * @returns undefined where sides make too many sums, where stock is scarce or a panel may not be cut from all of it, and
   *   where there is a rack
   */
  static of(nestTask: NestTask): PricedSheets | undefined {
    const { task, kinds } = nestTask;
    const { kerf, stock, rack } = task;
    if (rack.length > 0 || stock.some(({ available }) => available !== undefined)) return undefined;
    if (kinds.some(({ allowed }) => allowed.length < stock.length)) return undefined;
    const longest = Math.max(...stock.flatMap(({ width, height }) => [width, height])) + kerf;
    const lengths = new Set(kinds.flatMap(({ longSide, shortSide }) => [longSide + kerf, shortSide + kerf]));
    const points = sumsUpTo([...lengths], longest);
    return points && new PricedSheets(nestTask, points);
  }

  private constructor(
    private readonly nestTask: NestTask,
    points: readonly number[],
  ) {
    this.points = points;
    const { task, kinds } = nestTask;
    const n = points.length;
    const below = (length: number) => {
      let at = n - 1;
      while (points[at]! > length) at--;
      return at;
    };
    const pairOf = (a: number, b: number): [number, number] => [below(Math.max(a, b)), below(Math.min(a, b))];
    this.formats = task.stock.map(({ width, height }) => pairOf(width + task.kerf, height + task.kerf));
    this.sides = kinds.map(({ longSide, shortSide }) => pairOf(longSide + task.kerf, shortSide + task.kerf));
    this.rest = new Int16Array(n * n);
    this.half = new Int16Array(n);
    for (let i = 0; i < n; i++) {
      for (let a = 0, at = i; a <= i; a++) {
        while (points[at]! > points[i]! - points[a]!) at--;
        this.rest[i * n + a] = at;
        if (2 * points[a]! <= points[i]!) this.half[i] = a;
      }
    }
    const labels = n * n * LABELS;
    this.worth = new Float64Array(labels);
    this.sets = new Int32Array(labels * WORDS);
    this.partA = new Int32Array(labels);
    this.partB = new Int32Array(labels);
    this.cut = new Int16Array(labels);
    this.turned = new Uint8Array(labels);
  }

  /**
   * @param items kinds of the panels that may be used, a number a panel; no more than 128 are looked at
   * @param prices by kind
   * @returns pauses often
   */
  *fill(items: readonly number[], prices: ArrayLike<number>): Generator<undefined, void, void> {
    const { points, worth, half, rest, sides } = this;
    const n = points.length;
    this.items = items.slice(0, MOST_ITEMS);
    worth.fill(-1);
    this.items.forEach((kind, item) => {
      if (!(prices[kind]! > 0)) return;
      const [i, j] = sides[kind]!;
      const at = (i * n + j) * LABELS;
      spare.fill(0);
      spare[item >> 5] = 1 << (item & 31);
      this.put(at, prices[kind]!, -1 - item, 0, 0, 0);
    });
    for (let i = 1; i < n; i++) {
      for (let j = 1; j <= i; j++) {
        const at = (i * n + j) * LABELS;
        if (i > j) this.inherit(at, ((i - 1) * n + j) * LABELS);
        this.inherit(at, (i * n + j - 1) * LABELS);
        for (let above = 0; above < 2; above++) {
          const length = above === 0 ? i : j;
          const breadth = above === 0 ? j : i;
          const row = length * n;
          for (let a = 1; a <= half[length]!; a++) {
            const b = rest[row + a]!;
            const first = (a >= breadth ? a * n + breadth : breadth * n + a) * LABELS;
            const second = (b >= breadth ? b * n + breadth : breadth * n + b) * LABELS;
            // Mostly not even the best of both make one of the best.
            if (
              worth[first]! + worth[second]! > worth[at + LABELS - 1]! &&
              worth[first]! > 0 &&
              worth[second]! > 0
            )
              this.join(at, first, second, 2 * a + above, turnedOf(a, b, breadth, above));
          }
        }
      }
      this.work += 3 * i * i;
      yield undefined;
    }
  }

  private inherit(to: number, from: number): void {
    const { worth, sets, partA, partB, cut, turned } = this;
    for (let l = from; l < from + LABELS; l++) {
      if (worth[l]! <= worth[to + LABELS - 1]!) return;
      for (let w = 0; w < WORDS; w++) spare[w] = sets[l * WORDS + w]!;
      this.put(to, worth[l]!, partA[l]!, partB[l]!, cut[l]!, turned[l]!);
    }
  }

  /** Joins what the two parts of a piece hold. */
  private join(to: number, first: number, second: number, cut: number, turned: number): void {
    const { worth, sets } = this;
    const last = to + LABELS - 1;
    for (let x = first; x < first + LABELS && worth[x]! > 0; x++) {
      for (let y = second; y < second + LABELS && worth[y]! > 0; y++) {
        const sum = worth[x]! + worth[y]!;
        if (sum <= worth[last]!) break;
        this.work += 5;
        if (!this.areApart(x, y)) continue;
        for (let w = 0; w < WORDS; w++) spare[w] = sets[x * WORDS + w]! | sets[y * WORDS + w]!;
        this.put(to, sum, x, y, cut, turned);
      }
    }
  }

  private entry(a: number, b: number): number {
    return (a >= b ? a * this.points.length + b : b * this.points.length + a) * LABELS;
  }

  private areApart(x: number, y: number): boolean {
    const { sets } = this;
    const [a, b] = [x * WORDS, y * WORDS];
    const shared =
      (sets[a]! & sets[b]!) |
      (sets[a + 1]! & sets[b + 1]!) |
      (sets[a + 2]! & sets[b + 2]!) |
      (sets[a + 3]! & sets[b + 3]!);
    return shared === 0;
  }

  /** Puts the set in `spare` among those of a piece, unless it is there already. */
  private put(to: number, own: number, a: number, b: number, cut: number, turned: number): void {
    const { worth, sets } = this;
    for (let l = to; l < to + LABELS && worth[l]! >= own - 1e-9; l++) {
      const x = l * WORDS;
      if (
        sets[x] === spare[0] &&
        sets[x + 1] === spare[1] &&
        sets[x + 2] === spare[2] &&
        sets[x + 3] === spare[3]
      )
        return;
    }
    let l = to + LABELS - 1;
    for (; l > to && worth[l - 1]! < own; l--) {
      worth[l] = worth[l - 1]!;
      this.partA[l] = this.partA[l - 1]!;
      this.partB[l] = this.partB[l - 1]!;
      this.cut[l] = this.cut[l - 1]!;
      this.turned[l] = this.turned[l - 1]!;
      for (let w = 0; w < WORDS; w++) sets[l * WORDS + w] = sets[(l - 1) * WORDS + w]!;
    }
    worth[l] = own;
    this.partA[l] = a;
    this.partB[l] = b;
    this.cut[l] = cut;
    this.turned[l] = turned;
    for (let w = 0; w < WORDS; w++) sets[l * WORDS + w] = spare[w]!;
  }

  /** The most that a sheet of the last filling is worth, for what it costs. */
  most(costs: readonly number[]): number {
    return Math.max(0, ...this.formats.map(([i, j], stock) => this.worth[this.entry(i, j)]! / costs[stock]!));
  }

  /** @returns sheets of the last filling worth more than `least` times their cost, those worth most first */
  sheets(costs: readonly number[], least: number): PricedSheet[] {
    const found = new Map<string, Joined>();
    this.formats.forEach(([i, j], stock) => {
      for (let a = 1; a <= this.half[i]!; a++) this.gather(found, stock, costs[stock]!, least, i, j, a, 0);
      for (let a = 1; a <= this.half[j]!; a++) this.gather(found, stock, costs[stock]!, least, j, i, a, 1);
    });
    const best = [...found.values()].sort((p, q) => q.rate - p.rate).slice(0, MOST_SHEETS);
    return best.map(({ stock, a, b, cut, turned }) => {
      const { width, height } = this.nestTask.task.stock[stock]!;
      const places: FilledPlace[] = [];
      this.writeParts(places, a, b, cut, turned, 0, 0, height > width);
      return { stock, places, kinds: places.map(({ kind }) => kind) };
    });
  }

  /** All that a first cut through a stock sheet makes, in so far as it is worth enough. */
  private gather(
    found: Map<string, Joined>,
    stock: number,
    cost: number,
    least: number,
    length: number,
    breadth: number,
    a: number,
    above: number,
  ): void {
    const { worth, sets } = this;
    const b = this.rest[length * this.points.length + a]!;
    const [first, second] = [this.entry(a, breadth), this.entry(b, breadth)];
    for (let x = first; x < first + LABELS && worth[x]! > 0; x++) {
      for (let y = second; y < second + LABELS && worth[y]! > 0; y++) {
        const rate = (worth[x]! + worth[y]!) / cost;
        if (rate <= least) break;
        this.work += 500;
        if (!this.areApart(x, y)) continue;
        let name = `${stock}`;
        for (let w = 0; w < WORDS; w++) name += `/${sets[x * WORDS + w]! | sets[y * WORDS + w]!}`;
        if (found.has(name)) continue;
        const turned = turnedOf(a, b, breadth, above);
        found.set(name, { stock, rate, a: x, b: y, cut: 2 * a + above, turned });
      }
    }
  }

  /** @param isTurned whether the long side of the piece stands up */
  private write(places: FilledPlace[], label: number, x: number, y: number, isTurned: boolean): void {
    const a = this.partA[label]!;
    if (a >= 0) {
      this.writeParts(places, a, this.partB[label]!, this.cut[label]!, this.turned[label]!, x, y, isTurned);
      return;
    }
    const kind = this.items[-1 - a]!;
    const { poses, longSide, shortSide } = this.nestTask.kinds[kind]!;
    const [width, height] = isTurned ? [shortSide, longSide] : [longSide, shortSide];
    const pose = poses.findIndex((own) => own.width === width && own.height === height);
    places.push({ kind, pose, x, y, space: 0 });
  }

  private writeParts(
    places: FilledPlace[],
    a: number,
    b: number,
    cut: number,
    turned: number,
    x: number,
    y: number,
    isTurned: boolean,
  ): void {
    const by = this.points[cut >> 1]!;
    this.write(places, a, x, y, isTurned !== (turned & 1) > 0);
    const isAbove = (cut & 1) > 0 !== isTurned;
    this.write(places, b, isAbove ? x : x + by, isAbove ? y + by : y, isTurned !== (turned & 2) > 0);
  }
}

/** The table lays a piece along its longer side, so a part may have to be turned. */
function turnedOf(a: number, b: number, breadth: number, above: number): number {
  return (Number(a < breadth) ^ above) + 2 * (Number(b < breadth) ^ above);
}

const spare = new Int32Array(WORDS);
