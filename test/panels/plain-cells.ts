import type { Box, Region } from '../../core/geometry/polygon';

/** A piece that a cell cuts out of an area. */
export interface PlainPiece {
  readonly width: number;
  readonly height: number;
  readonly area: number;
  readonly isWhole: boolean;
  readonly isSliver: () => boolean;
}

/** An area on the coordinates of its corners: `filled[row][column]`. Blocks under sloping edges mean nothing. */
export interface Raster {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly filled: readonly Uint8Array[];
}

const known = new WeakMap<Region, Raster>();

export function rectilinearRaster(area: Region): Raster {
  let raster = known.get(area);
  if (!raster) known.set(area, (raster = rasterOf(area)));
  return raster;
}

function rasterOf(area: Region): Raster {
  const rings = area.flatMap(({ outer, holes }) => [outer, ...holes]);
  const lines = (values: number[]) => [...new Set(values)].sort((a, b) => a - b);
  const xs = lines(rings.flatMap((ring) => ring.map(({ x }) => x)));
  const ys = lines(rings.flatMap((ring) => ring.map(({ y }) => y)));
  const filled = ys.slice(1).map((top, j) => {
    const y = (ys[j]! + top) / 2;
    const crossings = rings.flatMap((ring) =>
      ring.flatMap((a, i) => {
        const b = ring[(i + 1) % ring.length]!;
        return a.y > y !== b.y > y ? [a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)] : [];
      }),
    );
    return Uint8Array.from(xs.slice(1), (right, i) => {
      const x = (xs[i]! + right) / 2;
      return crossings.filter((at) => at < x).length % 2;
    });
  });
  return { xs, ys, filled };
}

/** The connected pieces of an area in a cell through which no sloping edge passes. */
export function cutRectilinearCell(
  { filled }: Raster,
  columns: readonly Line[],
  rows: readonly Line[],
  cell: Box,
  leastWidth: number,
): PlainPiece[] {
  if (columns.length < 2 || rows.length < 2) return [];
  const [i0, j0] = [columns[0]!.after, rows[0]!.after];
  const [m, n] = [columns.length - 1, rows.length - 1];
  const isOpen = new Uint8Array(m * n);
  for (let j = 0; j < n; j++) for (let i = 0; i < m; i++) isOpen[j * m + i] = filled[j0 + j]![i0 + i]!;
  const pieces: PlainPiece[] = [];
  for (let first = 0; first < m * n; first++) {
    if (!isOpen[first]) continue;
    const blocks = [first];
    isOpen[first] = 0;
    const take = (block: number) => {
      if (!isOpen[block]) return;
      isOpen[block] = 0;
      blocks.push(block);
    };
    for (let k = 0; k < blocks.length; k++) {
      const block = blocks[k]!;
      const i = block % m;
      if (i > 0) take(block - 1);
      if (i + 1 < m) take(block + 1);
      if (block >= m) take(block - m);
      if (block + m < m * n) take(block + m);
    }
    pieces.push(pieceOf(blocks, columns, rows, cell, leastWidth));
  }
  return pieces;
}

export interface Line {
  readonly at: number;
  /** The area's block that begins at or before this line. */
  readonly after: number;
}

/** The area's lines strictly between two others, and those two, kept to the area's extent. */
export function linesIn(all: readonly number[], from: number, to: number): Line[] {
  const lines: Line[] = [];
  for (let i = 0; i < all.length; i++) {
    const at = all[i]!;
    const next = all[i + 1];
    if (at <= from && next !== undefined && next > from) lines.push({ at: from, after: i });
    else if (at > from && at < to) lines.push({ at, after: i });
    else if (at >= to) {
      lines.push({ at: to, after: i - 1 });
      break;
    }
  }
  return lines;
}

function pieceOf(
  blocks: readonly number[],
  columns: readonly Line[],
  rows: readonly Line[],
  cell: Box,
  leastWidth: number,
): PlainPiece {
  const m = columns.length - 1;
  let [left, bottom, right, top, area] = [Infinity, Infinity, -Infinity, -Infinity, 0];
  for (const block of blocks) {
    const i = block % m;
    const j = (block - i) / m;
    left = Math.min(left, columns[i]!.at);
    right = Math.max(right, columns[i + 1]!.at);
    bottom = Math.min(bottom, rows[j]!.at);
    top = Math.max(top, rows[j + 1]!.at);
    area += (columns[i + 1]!.at - columns[i]!.at) * (rows[j + 1]!.at - rows[j]!.at);
  }
  const [width, height] = [right - left, top - bottom];
  const isRectangle = area === width * height;
  return {
    width,
    height,
    area,
    isWhole: isRectangle && width === cell.right - cell.left && height === cell.top - cell.bottom,
    isSliver: () =>
      isRectangle
        ? Math.min(width, height) < leastWidth && area > 10_000
        : hasNarrowPart(blocks, columns, rows, leastWidth),
  };
}

/**
 * Opened by a square of the least width: a block stays if some filled rectangle of blocks, wide and high enough,
 * holds it. Of the rest, connected parts of more than 1 mm² that touch two opposite edges make a sliver.
 */
function hasNarrowPart(
  blocks: readonly number[],
  columns: readonly Line[],
  rows: readonly Line[],
  leastWidth: number,
): boolean {
  const m = columns.length - 1;
  const n = rows.length - 1;
  const filled = new Set(blocks);
  const opened = new Set<number>();
  for (let j0 = 0; j0 < n; j0++) {
    for (let i0 = 0; i0 < m; i0++) {
      for (let j1 = j0; j1 < n; j1++) {
        if (rows[j1 + 1]!.at - rows[j0]!.at < leastWidth) continue;
        for (let i1 = i0; i1 < m; i1++) {
          if (columns[i1 + 1]!.at - columns[i0]!.at < leastWidth) continue;
          const inside: number[] = [];
          for (let j = j0; j <= j1; j++) for (let i = i0; i <= i1; i++) inside.push(j * m + i);
          if (inside.every((block) => filled.has(block))) inside.forEach((block) => opened.add(block));
        }
      }
    }
  }
  const lost = new Set(blocks.filter((block) => !opened.has(block)));
  const neighbours = (block: number) => {
    const i = block % m;
    return {
      left: i > 0 ? block - 1 : -1,
      right: i + 1 < m ? block + 1 : -1,
      below: block - m,
      above: block + m < m * n ? block + m : -1,
    };
  };
  for (const first of lost) {
    const open = [first];
    lost.delete(first);
    let area = 0;
    const bare = { left: false, right: false, below: false, above: false };
    for (let block = open.pop(); block !== undefined; block = open.pop()) {
      const i = block % m;
      const j = (block - i) / m;
      area += (columns[i + 1]!.at - columns[i]!.at) * (rows[j + 1]!.at - rows[j]!.at);
      for (const [side, other] of Object.entries(neighbours(block))) {
        if (!filled.has(other)) bare[side as keyof typeof bare] = true;
        if (lost.delete(other)) open.push(other);
      }
    }
    if (area > 10_000 && ((bare.left && bare.right) || (bare.below && bare.above))) return true;
  }
  return false;
}
