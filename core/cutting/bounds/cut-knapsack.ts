import type { BoundSize, Extent } from '../weighings';

/** Lengths of pieces at most; where there are more, sides are rounded down to a raster. */
const MOST_POINTS = 160;

/**
 * The most that a piece of sheet can hold of weighted panels when it is cut edge to edge, each panel as often as
 * wanted and either way round.
 *
 * Exact for the sides given, unless they make so many different lengths that they must be rounded down: then a piece
 * holds at least as much, which is what a bound needs.
 *
 * Source: P. C. Gilmore, R. E. Gomory, Multistage cutting stock problems of two and more dimensions, Operations
 * Research 13 (1965), and J. C. Herz, Recursive computational procedure for two-dimensional stock cutting, IBM
 * Journal of Research and Development 16 (1972), for cuts at sums of sides alone; from memory.
 */
export class CutKnapsack {
  /** What filling once costs, in entries looked at. */
  readonly work: number;
  private readonly points: readonly number[];
  /** Of the raster, the length that its last point stands for; undefined: points are lengths. */
  private readonly reach: number | undefined;
  /** By size, the points of its sides, the longer first; undefined where no carrier is long enough. */
  private readonly sides: readonly (readonly [number, number] | undefined)[];
  /** The point at or below what is left of point i (row) after one of point a (column). */
  private readonly rest: Int16Array;
  /** Of point i: how many points are at most half of it. */
  private readonly half: Int16Array;
  private readonly worth: Float64Array;
  /** The size that is worth most by itself in a piece; −1 for none. */
  private readonly lone: Int16Array;
  private weights: ArrayLike<number> = [];

  /** @param sizes kerf included, as the carriers are */
  constructor(
    private readonly sizes: readonly BoundSize[],
    carriers: readonly Extent[],
  ) {
    const longest = Math.max(...carriers.flatMap(({ width, height }) => [width, height]));
    const lengths = [...new Set(sizes.flatMap(({ width, height }) => [width, height]))];
    const exact = sumsUpTo(lengths, longest);
    this.reach = exact ? undefined : longest;
    this.points = exact ?? Array.from({ length: MOST_POINTS + 1 }, (_, i) => i);
    const n = this.points.length;
    this.sides = sizes.map((size) =>
      Math.max(size.width, size.height) > longest ? undefined : this.pointsOf(size),
    );
    this.rest = new Int16Array(n * n);
    this.half = new Int16Array(n);
    for (let i = 0; i < n; i++) {
      let below = i;
      for (let a = 0; a <= i; a++) {
        const left = this.points[i]! - this.points[a]!;
        while (this.points[below]! > left) below--;
        this.rest[i * n + a] = below;
        if (2 * this.points[a]! <= this.points[i]!) this.half[i] = a;
      }
    }
    this.worth = new Float64Array(n * n);
    this.lone = new Int16Array(n * n);
    this.work = Math.ceil(n ** 3 / 4) + n * n;
  }

  /** @param weights of each size, whole numbers from 0 */
  *fill(weights: ArrayLike<number>): Generator<number, void, void> {
    const { points, rest, half, worth, lone, sides } = this;
    const n = points.length;
    this.weights = weights;
    worth.fill(0);
    lone.fill(-1);
    sides.forEach((points, size) => {
      if (!points) return;
      const at = points[0] * n + points[1];
      const before = lone[at]!;
      if (weights[size]! > 0 && (before < 0 || weights[size]! > weights[before]!)) lone[at] = size;
    });
    const better = (a: number, b: number) => (b < 0 || (a >= 0 && weights[a]! >= weights[b]!) ? a : b);
    for (let i = 1; i < n; i++) {
      for (let j = 1; j <= i; j++) {
        const at = i * n + j;
        // A piece as wide as high may hold what lies below it either way.
        const narrower = i > j ? lone[(i - 1) * n + j]! : -1;
        const own = better(lone[at]!, better(narrower, lone[at - 1]!));
        lone[at] = own;
        let best = own < 0 ? 0 : weights[own]!;
        // The table is the same across its diagonal, so both kinds of cut read along a row.
        for (let a = 1, row = j * n, left = i * n; a <= half[i]!; a++) {
          const sum = worth[row + a]! + worth[row + rest[left + a]!]!;
          if (sum > best) best = sum;
        }
        for (let a = 1, row = i * n, left = j * n; a <= half[j]!; a++) {
          const sum = worth[row + a]! + worth[row + rest[left + a]!]!;
          if (sum > best) best = sum;
        }
        worth[at] = worth[j * n + i] = best;
      }
      yield (i * i * 3) / 4;
    }
  }

  /** False where sides had to be rounded down. */
  get isExact(): boolean {
    return this.reach === undefined;
  }

  most(piece: Extent): number {
    const [i, j] = this.pointsOf(piece);
    return this.worth[i * this.points.length + j]!;
  }

  /** Counts of each size in a fullest piece. */
  pattern(piece: Extent): Float64Array {
    const counts = new Float64Array(this.sizes.length);
    this.addTo(counts, ...this.pointsOf(piece));
    return counts;
  }

  private addTo(counts: Float64Array, x: number, y: number): void {
    const { points, rest, half, worth, lone, weights } = this;
    const n = points.length;
    const [i, j] = x >= y ? [x, y] : [y, x];
    const best = worth[i * n + j]!;
    if (best === 0) return;
    const own = lone[i * n + j]!;
    if (own >= 0 && weights[own]! === best) {
      counts[own]!++;
      return;
    }
    for (const [across, along] of [
      [i, j],
      [j, i],
    ] as const) {
      for (let a = 1; a <= half[across]!; a++) {
        const left = rest[across * n + a]!;
        if (worth[along * n + a]! + worth[along * n + left]! !== best) continue;
        this.addTo(counts, a, along);
        this.addTo(counts, left, along);
        return;
      }
    }
  }

  private pointsOf({ width, height }: Extent): [number, number] {
    const [a, b] = [this.pointBelow(width), this.pointBelow(height)];
    return a >= b ? [a, b] : [b, a];
  }

  private pointBelow(length: number): number {
    const { points, reach } = this;
    if (reach !== undefined) return Math.floor((length * MOST_POINTS) / reach);
    let [from, to] = [0, points.length];
    while (to - from > 1) {
      const middle = (from + to) >> 1;
      if (points[middle]! <= length) from = middle;
      else to = middle;
    }
    return from;
  }
}

/** All sums of lengths up to the longest, from 0; undefined if they are too many. */
export function sumsUpTo(lengths: readonly number[], longest: number): number[] | undefined {
  const sums = new Set([0]);
  const open = [0];
  for (let sum = open.pop(); sum !== undefined; sum = open.pop()) {
    for (const length of lengths) {
      const next = sum + length;
      if (next > longest || sums.has(next)) continue;
      sums.add(next);
      if (sums.size > MOST_POINTS) return undefined;
      open.push(next);
    }
  }
  return [...sums].sort((a, b) => a - b);
}
