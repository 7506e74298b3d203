import type { Hundredth } from '../units';
import type { AreaBlocks } from './area-blocks';
import { partsOf, type Blocks } from './blocks';
import { leastLostArea } from './narrow-place';
import { narrowestLost } from './sliver';

/*
 * Thousands of starts cut an area into cells that look alike but for where the cell's own sides run. So what a
 * cell holds is worked out once for each range of blocks it covers, and sized for each cell.
 */

/** Where a cell lies along one axis, and which of the area's blocks it covers: [low, high). */
export interface Span {
  readonly from: Hundredth;
  readonly to: Hundredth;
  readonly low: number;
  readonly high: number;
  /** The cell does not reach beyond the area's outermost coordinates. */
  readonly isInside: boolean;
}

/** The pieces of every cell that covers the same blocks. */
export interface CellShape {
  readonly parts: readonly PartShape[];
}

interface PartShape {
  /** Line numbers of the area that the part's blocks lie between; the outermost are the cell's own sides. */
  readonly columnLines: readonly number[];
  readonly rowLines: readonly number[];
  readonly filled: Uint8Array;
  /** The part fills its bounding rectangle. */
  readonly isRectangle: boolean;
  /** Largest inscribed rectangles: first and last line each way, and their blocks as bits; none if too many. */
  readonly largest: readonly Inscribed[] | null;
  /** Of each block, the lines between which the part goes on to its left and right, below and above. */
  readonly reach: readonly Inscribed[];
  /** Its rim, unless it is a rectangle. */
  readonly rim: readonly RimEdge[];
}

/** An edge of a part along one of its lines, between two lines across. */
interface RimEdge {
  readonly isUpright: boolean;
  readonly line: number;
  readonly low: number;
  readonly high: number;
}

interface Inscribed {
  readonly i0: number;
  readonly i1: number;
  readonly j0: number;
  readonly j1: number;
  readonly bits: number;
}

/** Shapes of cells that no sloping edge passes through, each worked out when it is first asked for. */
export function cellShapes(area: AreaBlocks): (column: Span, row: Span) => CellShape {
  const known = new Map<number, CellShape>();
  const { columns, rows } = area;
  return (column, row) => {
    const key = ((column.low * (columns + 1) + column.high) * (rows + 1) + row.low) * (rows + 1) + row.high;
    let shape = known.get(key);
    if (!shape) known.set(key, (shape = shapeOf(area, column, row)));
    return shape;
  };
}

export interface PartSize {
  readonly width: Hundredth;
  readonly height: Hundredth;
}

/** Position of a line of the area as it bounds a piece in a cell that covers [low, high): not beyond the cell. */
function lineAt(lines: readonly Hundredth[], line: number, { from, to, low, high }: Span): Hundredth {
  if (line === low) return Math.max(from, lines[line]!);
  return line === high ? Math.min(to, lines[line]!) : lines[line]!;
}

export function partWidth(area: AreaBlocks, { columnLines }: PartShape, column: Span): Hundredth {
  return lineAt(area.xs, columnLines.at(-1)!, column) - lineAt(area.xs, columnLines[0]!, column);
}

export function partHeight(area: AreaBlocks, { rowLines }: PartShape, row: Span): Hundredth {
  return lineAt(area.ys, rowLines.at(-1)!, row) - lineAt(area.ys, rowLines[0]!, row);
}

export function partArea(area: AreaBlocks, part: PartShape, column: Span, row: Span): number {
  if (part.isRectangle) return partWidth(area, part, column) * partHeight(area, part, row);
  const { xs, ys, columns, rows, filled } = partBlocks(area, part, column, row);
  let sum = 0;
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      if (filled[j * columns + i]) sum += (xs[i + 1]! - xs[i]!) * (ys[j + 1]! - ys[j]!);
    }
  }
  return sum;
}

/** How much of the piece's rim does not lie along the cell's own sides, as `cutLengthOf` says. */
export function partCutLength(area: AreaBlocks, part: PartShape, column: Span, row: Span): number {
  const { columnLines, rowLines } = part;
  const left = lineAt(area.xs, columnLines[0]!, column);
  const right = lineAt(area.xs, columnLines.at(-1)!, column);
  const bottom = lineAt(area.ys, rowLines[0]!, row);
  const top = lineAt(area.ys, rowLines.at(-1)!, row);
  const [uncutLeft, uncutRight] = [left === column.from, right === column.to];
  const [uncutBelow, uncutAbove] = [bottom === row.from, top === row.to];
  if (part.isRectangle) {
    const uprights = (uncutLeft ? 0 : 1) + (uncutRight ? 0 : 1);
    return uprights * (top - bottom) + ((uncutBelow ? 0 : 1) + (uncutAbove ? 0 : 1)) * (right - left);
  }
  let length = 0;
  for (const { isUpright, line, low, high } of part.rim) {
    const last = (isUpright ? columnLines : rowLines).length - 1;
    if (line === 0 && (isUpright ? uncutLeft : uncutBelow)) continue;
    if (line === last && (isUpright ? uncutRight : uncutAbove)) continue;
    length += isUpright
      ? lineAt(area.ys, rowLines[high]!, row) - lineAt(area.ys, rowLines[low]!, row)
      : lineAt(area.xs, columnLines[high]!, column) - lineAt(area.xs, columnLines[low]!, column);
  }
  return length;
}

/** Whether the piece is a sliver, as `narrowPlace` says. */
export function isNarrowPart(
  area: AreaBlocks,
  part: PartShape,
  column: Span,
  row: Span,
  leastWidth: Hundredth,
): boolean {
  if (part.isRectangle) {
    const width = partWidth(area, part, column);
    const height = partHeight(area, part, row);
    return (width < leastWidth || height < leastWidth) && width * height > leastLostArea;
  }
  if (!part.largest) return narrowestLost(partBlocks(area, part, column, row), leastWidth) !== null;

  let opened = 0;
  let all = 0;
  for (let n = 0; n < part.largest.length; n++) {
    const largest = part.largest[n]!;
    all |= largest.bits;
    if ((opened & largest.bits) === largest.bits) continue;
    if (fits(area, part, largest, column, row, leastWidth)) opened |= largest.bits;
  }
  if (opened === all) return false;
  // A lost block between two edges nearer than the least width decides at once; staircases have none.
  const { columnLines, rowLines } = part;
  const columns = columnLines.length - 1;
  for (let n = 0; n < part.reach.length; n++) {
    const reach = part.reach[n]!;
    if (reach.bits & opened || fits(area, part, reach, column, row, leastWidth)) continue;
    const block = 31 - Math.clz32(reach.bits);
    const i = block % columns;
    const j = (block - i) / columns;
    const width = lineAt(area.xs, columnLines[i + 1]!, column) - lineAt(area.xs, columnLines[i]!, column);
    const height = lineAt(area.ys, rowLines[j + 1]!, row) - lineAt(area.ys, rowLines[j]!, row);
    if (width * height > leastLostArea) return true;
  }
  return narrowestLost(partBlocks(area, part, column, row), leastWidth) !== null;
}

/** Whether a range of a part's blocks is at least the least width each way. */
function fits(
  area: AreaBlocks,
  { columnLines, rowLines }: PartShape,
  { i0, i1, j0, j1 }: Inscribed,
  column: Span,
  row: Span,
  leastWidth: Hundredth,
): boolean {
  return (
    lineAt(area.xs, columnLines[i1]!, column) - lineAt(area.xs, columnLines[i0]!, column) >= leastWidth &&
    lineAt(area.ys, rowLines[j1]!, row) - lineAt(area.ys, rowLines[j0]!, row) >= leastWidth
  );
}

function partBlocks(area: AreaBlocks, part: PartShape, column: Span, row: Span): Blocks {
  const xs = part.columnLines.map((line) => lineAt(area.xs, line, column));
  const ys = part.rowLines.map((line) => lineAt(area.ys, line, row));
  return { xs, ys, columns: xs.length - 1, rows: ys.length - 1, filled: part.filled };
}

/** Raster of the cell on the lines that matter to it, taken apart into connected parts. */
function shapeOf(area: AreaBlocks, column: Span, row: Span): CellShape {
  const at = (i: number, j: number) => area.filled[j * area.columns + i]!;
  const isColumnLikeNext = (i: number) => {
    for (let j = row.low; j < row.high; j++) if (at(i, j) !== at(i + 1, j)) return false;
    return true;
  };
  const isRowLikeNext = (j: number) => {
    for (let i = column.low; i < column.high; i++) if (at(i, j) !== at(i, j + 1)) return false;
    return true;
  };
  const xs = keptLines(column, isColumnLikeNext);
  const ys = keptLines(row, isRowLikeNext);
  const columns = xs.length - 1;
  const rows = ys.length - 1;
  const filled = new Uint8Array(columns * rows);
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) filled[j * columns + i] = at(xs[i]!, ys[j]!);
  }
  return { parts: partsOf({ xs, ys, columns, rows, filled }).map(partShape) };
}

/** The outer lines of a span, and those within it at which anything changes. */
function keptLines({ low, high }: Span, isLikeNext: (stripe: number) => boolean): number[] {
  const lines = [low];
  for (let stripe = low; stripe + 1 < high; stripe++) if (!isLikeNext(stripe)) lines.push(stripe + 1);
  lines.push(high);
  return lines;
}

/** The part on its bounding rectangle alone. */
function partShape({ xs, ys, columns, rows, filled }: Blocks): PartShape {
  let [i0, j0, i1, j1] = [columns, rows, 0, 0];
  filled.forEach((value, block) => {
    if (!value) return;
    const i = block % columns;
    const j = (block - i) / columns;
    i0 = Math.min(i0, i);
    i1 = Math.max(i1, i + 1);
    j0 = Math.min(j0, j);
    j1 = Math.max(j1, j + 1);
  });
  const trimmed = new Uint8Array((i1 - i0) * (j1 - j0));
  for (let j = j0; j < j1; j++) {
    trimmed.set(filled.subarray(j * columns + i0, j * columns + i1), (j - j0) * (i1 - i0));
  }
  const isRectangle = !trimmed.includes(0);
  return {
    columnLines: xs.slice(i0, i1 + 1),
    rowLines: ys.slice(j0, j1 + 1),
    filled: trimmed,
    isRectangle,
    largest: isRectangle ? null : largestInscribed(trimmed, i1 - i0, j1 - j0),
    reach: isRectangle ? [] : reachOfBlocks(trimmed, i1 - i0, j1 - j0),
    rim: isRectangle ? [] : rimOf(trimmed, i1 - i0, j1 - j0),
  };
}

/** Steps between a filled block and one that is not; those that go on from each other as one. */
function rimOf(filled: Uint8Array, columns: number, rows: number): RimEdge[] {
  const at = (i: number, j: number) =>
    i >= 0 && j >= 0 && i < columns && j < rows && filled[j * columns + i] === 1;
  const rim: RimEdge[] = [];
  const walk = (isUpright: boolean, lines: number, across: number) => {
    for (let line = 0; line <= lines; line++) {
      let low = -1;
      for (let n = 0; n <= across; n++) {
        const isRim =
          n < across && (isUpright ? at(line - 1, n) !== at(line, n) : at(n, line - 1) !== at(n, line));
        if (isRim && low < 0) low = n;
        if (isRim || low < 0) continue;
        rim.push({ isUpright, line, low, high: n });
        low = -1;
      }
    }
  };
  walk(true, columns, rows);
  walk(false, rows, columns);
  return rim;
}

/** For each filled block its bit, and how far the part goes on from it each way. */
function reachOfBlocks(filled: Uint8Array, columns: number, rows: number): Inscribed[] {
  if (filled.length > 30) return [];
  const at = (i: number, j: number) =>
    i >= 0 && j >= 0 && i < columns && j < rows && filled[j * columns + i] === 1;
  const all: Inscribed[] = [];
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      if (!at(i, j)) continue;
      let [i0, i1, j0, j1] = [i, i + 1, j, j + 1];
      while (at(i0 - 1, j)) i0--;
      while (at(i1, j)) i1++;
      while (at(i, j0 - 1)) j0--;
      while (at(i, j1)) j1++;
      all.push({ i0, i1, j0, j1, bits: 1 << (j * columns + i) });
    }
  }
  return all;
}

function largestInscribed(filled: Uint8Array, columns: number, rows: number): Inscribed[] | null {
  if (filled.length > 30) return null;
  const all: Inscribed[] = [];
  for (let j0 = 0; j0 < rows; j0++) {
    for (let i0 = 0; i0 < columns; i0++) {
      for (let j1 = j0 + 1; j1 <= rows; j1++) {
        for (let i1 = i0 + 1; i1 <= columns; i1++) {
          let bits = 0;
          for (let j = j0; j < j1; j++) {
            for (let i = i0; i < i1; i++) if (filled[j * columns + i]) bits |= 1 << (j * columns + i);
          }
          if (countBits(bits) === (i1 - i0) * (j1 - j0)) all.push({ i0, i1, j0, j1, bits });
        }
      }
    }
  }
  return all.filter((one) => !all.some((other) => other !== one && (one.bits & other.bits) === one.bits));
}

function countBits(bits: number): number {
  let count = 0;
  for (let rest = bits; rest; rest &= rest - 1) count++;
  return count;
}
