import type { Steps } from '../panels/pace';
import { dualFeasibleInSteps, type DualFeasible } from './dual-feasible';

export interface Extent {
  readonly width: number;
  readonly height: number;
}

/** Panels of one size, kerf included. */
export interface BoundSize extends Extent {
  readonly count: number;
}

/** What all panels weigh together, and the most of it each stock sheet can carry, in the order given. */
export type Visit = (total: number, most: readonly number[]) => 'go on' | 'stop';

/**
 * Weighs the panels by products of dual feasible functions, one for width and one for height, made for each
 * stock format in turn; with pauses.
 *
 * If on every horizontal line panels count at most F in all by f of their widths, and on every vertical line at
 * most G by g of their heights, then f · g counts at most F · G on the whole stock sheet, wherever they lie.
 * A panel may lie either way round, so it is weighed
 * - as the mean of both ways: a stock sheet W × H then carries at most (F(W) G(H) + G(W) F(H)) / 2, or
 * - as the lesser of the ways in which it fits a stock sheet as that stands: at most F(W) G(H).
 *
 * @param carriers every sheet there is, kerf included: the stock formats, then the rack
 * @param formats how many of them are stock formats
 * @param visit called for each weighing until it says stop; `most` is reused between calls
 */
export function* weigh(
  sizes: readonly BoundSize[],
  carriers: readonly Extent[],
  formats: number,
  visit: Visit,
): Steps<void> {
  const merged = mergeEqual(sizes);
  if (merged.length === 0) return;
  const counts = Float64Array.from(merged, ({ count }) => count);
  const lengths = [...new Set(merged.flatMap(({ width, height }) => [width, height]))].sort((a, b) => a - b);
  let work = 0;
  for (const base of carriers.slice(0, formats)) {
    const standing = carriers.map((carrier) => standLike(carrier, base));
    const across = yield* tablesFor(base.width, lengths, merged, standing);
    const isSquare = base.width === base.height;
    const upright = isSquare ? across : yield* tablesFor(base.height, lengths, merged, standing);
    const ways = waysToLie(merged, standing);
    for (const [i, f] of across.entries()) {
      for (const g of isSquare ? upright.slice(i) : upright) {
        if (visit(meanWeight(f, g, counts), meanMost(f, g)) === 'stop') return;
        if (isSquare) continue;
        if (visit(lesserWeight(f, g, counts, ways), lesserMost(f, g)) === 'stop') return;
      }
      yield undefined;
      work += upright.length * (merged.length + carriers.length);
      if (work > MOST_WORK) return;
    }
  }
}

/** Sizes looked at in all. The strongest functions come first, and of many sizes no pair after them says more. */
const MOST_WORK = 3_000_000;

/** Turned, if only so it lies inside the format. */
function standLike(carrier: Extent, base: Extent): Extent {
  const { width, height } = carrier;
  const isInside = width <= base.width && height <= base.height;
  return !isInside && height <= base.width && width <= base.height
    ? { width: height, height: width }
    : carrier;
}

/** A function's values where they are wanted. */
interface Table {
  /** Of each size's width and height. */
  readonly width: Float64Array;
  readonly height: Float64Array;
  /** The most that lengths fitting in each carrier's width and height can add up to. */
  readonly mostWidth: Float64Array;
  readonly mostHeight: Float64Array;
}

/** @param lengths every width and height of the sizes, ascending */
function* tablesFor(
  length: number,
  lengths: readonly number[],
  sizes: readonly BoundSize[],
  carriers: readonly Extent[],
): Steps<Table[]> {
  const at = new Map(lengths.map((x, i) => [x, i]));
  const wide = Int32Array.from(sizes, ({ width }) => at.get(width)!);
  const high = Int32Array.from(sizes, ({ height }) => at.get(height)!);
  const values = new Float64Array(lengths.length);
  /** The most that a unit of any length up to this one counts. */
  const densities = new Float64Array(lengths.length);
  const lasts = (rooms: readonly number[]) => Int32Array.from(rooms, (room) => lastUpTo(lengths, room));
  const [widths, heights] = [carriers.map(({ width }) => width), carriers.map(({ height }) => height)];
  const [lastWide, lastHigh] = [lasts(widths), lasts(heights)];
  const tables: Table[] = [];
  for (const dual of yield* dualFeasibleInSteps(length, lengths)) {
    let density = 0;
    for (let i = 0; i < lengths.length; i++) {
      const x = lengths[i]!;
      // Longer than C can only lie on another format; there any value is right, as only its density counts.
      values[i] = dual.at(Math.min(x, length));
      density = Math.max(density, values[i]! / x);
      densities[i] = density;
    }
    const most = (rooms: readonly number[], last: Int32Array) =>
      Float64Array.from(rooms, (room, c) => mostIn(dual, room, last[c]! < 0 ? 0 : densities[last[c]!]!));
    tables.push({
      width: Float64Array.from(wide, (i) => values[i]!),
      height: Float64Array.from(high, (i) => values[i]!),
      mostWidth: most(widths, lastWide),
      mostHeight: most(heights, lastHigh),
    });
    if (tables.length % TABLES_OF_A_STEP === 0) yield undefined;
  }
  return tables;
}

const TABLES_OF_A_STEP = 8;

/** By superadditivity within C; and never more than the densest length would give all along. */
function mostIn(dual: DualFeasible, room: number, density: number): number {
  const dense = density * room;
  return room <= dual.length ? Math.min(dense, dual.at(room)) : dense;
}

/** Number of the last length up to a room, or -1; `lengths` ascending. */
function lastUpTo(lengths: readonly number[], room: number): number {
  let [from, to] = [-1, lengths.length];
  while (to - from > 1) {
    const middle = (from + to) >> 1;
    if (lengths[middle]! <= room) from = middle;
    else to = middle;
  }
  return from;
}

function meanWeight(f: Table, g: Table, counts: Float64Array): number {
  const { width: fw, height: fh } = f;
  const { width: gw, height: gh } = g;
  let total = 0;
  for (let s = 0; s < counts.length; s++) total += counts[s]! * (fw[s]! * gh[s]! + fh[s]! * gw[s]!);
  return total / 2;
}

const mostBuffer: number[] = [];

function meanMost(f: Table, g: Table): readonly number[] {
  mostBuffer.length = f.mostWidth.length;
  for (let c = 0; c < mostBuffer.length; c++) {
    mostBuffer[c] = (f.mostWidth[c]! * g.mostHeight[c]! + g.mostWidth[c]! * f.mostHeight[c]!) / 2;
  }
  return mostBuffer;
}

/** Per size whether it fits some carrier as it is (1), turned (2), both (3). */
export function waysToLie(sizes: readonly BoundSize[], carriers: readonly Extent[]): Uint8Array {
  return Uint8Array.from(sizes, ({ width, height }) => {
    const lying = carriers.some((carrier) => width <= carrier.width && height <= carrier.height);
    const standing = carriers.some((carrier) => height <= carrier.width && width <= carrier.height);
    return (lying ? 1 : 0) + (standing ? 2 : 0);
  });
}

function lesserWeight(f: Table, g: Table, counts: Float64Array, ways: Uint8Array): number {
  let total = 0;
  for (let s = 0; s < counts.length; s++) {
    if (ways[s] === 0) continue;
    const lying = ways[s]! & 1 ? f.width[s]! * g.height[s]! : Infinity;
    const standing = ways[s]! & 2 ? f.height[s]! * g.width[s]! : Infinity;
    total += counts[s]! * (lying < standing ? lying : standing);
  }
  return total;
}

function lesserMost(f: Table, g: Table): readonly number[] {
  mostBuffer.length = f.mostWidth.length;
  for (let c = 0; c < mostBuffer.length; c++) mostBuffer[c] = f.mostWidth[c]! * g.mostHeight[c]!;
  return mostBuffer;
}

function mergeEqual(sizes: readonly BoundSize[]): BoundSize[] {
  const merged = new Map<string, BoundSize>();
  for (const { width: a, height: b, count } of sizes) {
    const [width, height] = a >= b ? [a, b] : [b, a];
    const key = `${width}×${height}`;
    merged.set(key, { width, height, count: count + (merged.get(key)?.count ?? 0) });
  }
  return [...merged.values()];
}
