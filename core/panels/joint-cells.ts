import type { Box, Polygon } from '../geometry/polygon';
import type { StockSheet } from '../job/schema';
import type { Hundredth } from '../units';

/** A panel cell whose sides may be moved: what it holds, and how many of its pieces are slivers. */
export interface JointCell {
  readonly box: Box;
  readonly course: number;
  readonly stock: StockSheet;
  readonly pieces: readonly Polygon[];
  readonly slivers: number;
}

/** `x`: an upright joint, with cells to its left and right; `y`: a level one, with cells below and above. */
export type JointAxis = 'x' | 'y';

/** Names of a box's sides as seen across a joint: `low` and `high` across it, `from` and `to` along it. */
export const sidesAcross = {
  x: { low: 'left', high: 'right', from: 'bottom', to: 'top' },
  y: { low: 'bottom', high: 'top', from: 'left', to: 'right' },
} as const;

/** A straight stretch of joint: everything that moving it would change. */
export interface JointStretch {
  readonly axis: JointAxis;
  /** Where the cells before it end; those after it begin a joint gap further. */
  readonly at: Hundredth;
  /** Left of it, or below. */
  readonly before: readonly JointCell[];
  /** Right of it, or above. */
  readonly after: readonly JointCell[];
  /** `before[i]` and `after[i]` face each other along the same length, so that they could be one. */
  readonly paired: boolean;
}

/**
 * The stretches of joint beside a cell that could be moved in one, for each of its sides the longest first: as
 * far as the joint goes on straight between cells that hold something, then between those with slivers, then
 * the cell's own. Where courses are staggered, a level joint moves right across the zone or not at all.
 */
export function stretchesBeside(
  cell: JointCell,
  cells: readonly JointCell[],
  gap: Hundredth,
): JointStretch[] {
  const found: JointStretch[] = [];
  for (const axis of ['x', 'y'] as const) {
    const { low, high } = sidesAcross[axis];
    for (const at of [cell.box[high], cell.box[low] - gap])
      found.push(...stretchesAt(cell, cells, gap, axis, at));
  }
  return found;
}

type Pair = readonly [before: JointCell, after: JointCell];

function stretchesAt(
  cell: JointCell,
  cells: readonly JointCell[],
  gap: Hundredth,
  axis: JointAxis,
  at: Hundredth,
): JointStretch[] {
  const { low, high, from, to } = sidesAcross[axis];
  const before = cells.filter(({ box }) => box[high] === at);
  const after = cells.filter(({ box }) => box[low] === at + gap);
  if (before.length === 0 || after.length === 0) return [];
  const pairs: Pair[] = before
    .flatMap((one): Pair[] => {
      const other = after.find(({ box }) => box[from] === one.box[from] && box[to] === one.box[to]);
      return other ? [[one, other]] : [];
    })
    .sort((a, b) => a[0].box[from] - b[0].box[from]);
  const own = pairs.findIndex((pair) => pair.includes(cell));
  if (own < 0) return axis === 'y' ? [{ axis, at, before, after, paired: false }] : [];

  const follow = (holds: (pair: Pair) => boolean): Pair[] => {
    let [first, last] = [own, own];
    const goesOn = (i: number) =>
      pairs[i] !== undefined &&
      pairs[i + 1] !== undefined &&
      pairs[i]![0].box[to] + gap === pairs[i + 1]![0].box[from];
    while (goesOn(first - 1) && holds(pairs[first - 1]!)) first--;
    while (goesOn(last) && holds(pairs[last + 1]!)) last++;
    return pairs.slice(first, last + 1);
  };
  const isBetween = ([a, b]: Pair) => a.pieces.length > 0 && b.pieces.length > 0;
  if (!isBetween(pairs[own]!)) return [];
  const whole = follow(isBetween);
  const narrow = follow((pair) => isBetween(pair) && pair[0].slivers + pair[1].slivers > 0);
  const runs = [whole, narrow, [pairs[own]!]];
  return runs
    .filter((run, i) => runs.findIndex((other) => other.length === run.length) === i)
    .map((run) => ({
      axis,
      at,
      before: run.map(([one]) => one),
      after: run.map(([, other]) => other),
      paired: true,
    }));
}
