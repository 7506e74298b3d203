import { isRectilinear, type Region } from '../geometry/polygon';
import type { Hundredth } from '../units';
import { areaEdges, isInside, type AreaEdges } from './area-edges';

/**
 * A whole area as a raster on its own coordinates (see `blocks.ts`), with counts from which the filled blocks of
 * any range are known at once. Blocks that a sloping edge may pass through are `sloping` and never `filled`.
 */
export interface AreaBlocks {
  readonly xs: readonly Hundredth[];
  readonly ys: readonly Hundredth[];
  readonly columns: number;
  readonly rows: number;
  readonly filled: Uint8Array;
  /** Number of filled blocks left of column i and below row j, at j · (columns + 1) + i. */
  readonly filledBefore: Int32Array;
  readonly slopingBefore: Int32Array;
  readonly isRectilinear: boolean;
}

export function areaBlocks(region: Region): AreaBlocks {
  const edges = areaEdges(region);
  const xs = ascending([
    ...edges.vertical.map(({ at }) => at),
    ...edges.sloping.flatMap(({ a, b }) => [a.x, b.x]),
  ]);
  const ys = ascending([
    ...edges.horizontal.map(({ at }) => at),
    ...edges.sloping.flatMap(({ a, b }) => [a.y, b.y]),
  ]);
  const columns = xs.length - 1;
  const rows = ys.length - 1;
  const sloping = slopingBlocks(edges, xs, ys);
  const filled = filledBlocks(edges, xs, ys, sloping);
  return {
    xs,
    ys,
    columns,
    rows,
    filled,
    filledBefore: countsBefore(filled, columns, rows),
    slopingBefore: countsBefore(sloping, columns, rows),
    isRectilinear: region.every(isRectilinear),
  };
}

/** How many are set in the range of blocks [i0, i1) × [j0, j1). */
export function countIn(
  before: Int32Array,
  columns: number,
  i0: number,
  i1: number,
  j0: number,
  j1: number,
): number {
  const stride = columns + 1;
  return (
    before[j1 * stride + i1]! -
    before[j1 * stride + i0]! -
    before[j0 * stride + i1]! +
    before[j0 * stride + i0]!
  );
}

function slopingBlocks(
  { sloping }: AreaEdges,
  xs: readonly Hundredth[],
  ys: readonly Hundredth[],
): Uint8Array {
  const columns = xs.length - 1;
  const marks = new Uint8Array(columns * (ys.length - 1));
  const column = new Map(xs.map((x, i) => [x, i]));
  const row = new Map(ys.map((y, j) => [y, j]));
  for (const { a, b } of sloping) {
    const [i0, i1] = [column.get(Math.min(a.x, b.x))!, column.get(Math.max(a.x, b.x))!];
    const [j0, j1] = [row.get(Math.min(a.y, b.y))!, row.get(Math.max(a.y, b.y))!];
    for (let j = j0; j < j1; j++) marks.fill(1, j * columns + i0, j * columns + i1);
  }
  return marks;
}

function filledBlocks(
  edges: AreaEdges,
  xs: readonly Hundredth[],
  ys: readonly Hundredth[],
  sloping: Uint8Array,
): Uint8Array {
  const columns = xs.length - 1;
  const filled = new Uint8Array(sloping.length);
  for (let j = 0; j + 1 < ys.length; j++) {
    const y = (ys[j]! + ys[j + 1]!) / 2;
    // Vertical edges that cross this row, and blocks after a sloping one are asked for by themselves.
    const crossing = new Set<Hundredth>();
    for (const { at, from, to } of edges.vertical) {
      if (from < y && to >= y && !crossing.delete(at)) crossing.add(at);
    }
    let inside = false;
    let known = true;
    for (let i = 0; i < columns; i++) {
      const block = j * columns + i;
      if (crossing.has(xs[i]!)) inside = !inside;
      if (sloping[block]) {
        known = false;
        continue;
      }
      if (!known) inside = isInside(edges, (xs[i]! + xs[i + 1]!) / 2, y);
      known = true;
      if (inside) filled[block] = 1;
    }
  }
  return filled;
}

function countsBefore(marks: Uint8Array, columns: number, rows: number): Int32Array {
  const stride = columns + 1;
  const before = new Int32Array(stride * (rows + 1));
  for (let j = 0; j < rows; j++) {
    let inRow = 0;
    for (let i = 0; i < columns; i++) {
      inRow += marks[j * columns + i]!;
      before[(j + 1) * stride + i + 1] = before[j * stride + i + 1]! + inRow;
    }
  }
  return before;
}

function ascending(values: number[]): number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}
