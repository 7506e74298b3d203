import { leastStockSheets } from '../panels/least-sheets';
import { fillEdgeToEdge, fillFreely, type Fill, type FillTask, type Side } from './quick-fill';
import type { CuttingMethod, StockFormat } from './plan';

/** A cut panel as the fast nest sees it: its bounding rectangle and its true area. */
export interface CutSize {
  readonly width: number;
  readonly height: number;
  /** Hundredths squared; less than width × height for a notched panel. */
  readonly area: number;
}

/**
 * How many stock sheets these cut panels take in a few quick nests of their bounding rectangles, quarter turns
 * allowed. Never fewer than possible for rectangles, and rarely more than a first cutting plan of them takes.
 * Deterministic, and the order of the panels does not matter. For comparing thousands of starts, not for a cut list.
 *
 * Nests under one rule after the other until a bound is met; one stock sheet above it, nests again with the panels
 * first that made a stock sheet too many.
 *
 * @param cut sizes in hundredths; one larger than the stock sheet counts as a sheet of its own
 */
export function countStockSheets(
  cut: readonly CutSize[],
  { width, height }: Pick<StockFormat, 'width' | 'height'>,
  method: CuttingMethod,
  kerf: number,
): number {
  const { sides, whole } = readSizes(cut, width, height);
  if (sides.length <= 1) return whole + sides.length;
  const least = leastStockSheets(
    sides.map(({ long, short }) => ({ width: long, height: short, area: long * short })),
    width,
    height,
  );
  const task: FillTask = { width: width + kerf, height: height + kerf, kerf };
  const rules = rulesFor[method];
  let nests = Math.min(mostNests, Math.max(leastNests, Math.floor(mostWork / sides.length ** 2)));
  let fewest = Infinity;
  for (const { order, fill } of rules) {
    if (nests-- <= 0) return whole + fewest;
    fewest = Math.min(fewest, fill(sides.sort(order), task).sheets);
    if (fewest <= least) return whole + fewest;
  }
  if (fewest > least + 1) return whole + fewest;
  let again = sides.sort(rules[0]!.order);
  for (let round = 0; nests-- > 0; round++) {
    const { sheets, last } = rules[round % rules.length]!.fill(again, task);
    fewest = Math.min(fewest, sheets);
    if (fewest <= least) break;
    again = [...last, ...again.filter((side) => !last.includes(side))];
  }
  return whole + fewest;
}

/** Nests of one count: some dozen of a few panels, fewer of many, so that one count takes a millisecond at most. */
const mostNests = 12;
const leastNests = 3;
const mostWork = 40_000;

interface Rule {
  readonly order: (a: Side, b: Side) => number;
  readonly fill: Fill;
}

const byGirth = (a: Side, b: Side) => b.long + b.short - a.long - a.short || b.long - a.long;
const byDiagonal = (a: Side, b: Side) =>
  b.long * b.long + b.short * b.short - a.long * a.long - a.short * a.short || b.long - a.long;
const byArea = (a: Side, b: Side) => b.long * b.short - a.long * a.short || b.long - a.long;
const byShort = (a: Side, b: Side) => b.short - a.short || b.long - a.long;
const byLong = (a: Side, b: Side) => b.long - a.long || b.short - a.short;

/** In the order in which each adds the most to those before it, over some two thousand sets of cut panels. */
const rulesFor: Record<CuttingMethod, readonly Rule[]> = {
  'edge-to-edge': [
    { order: byDiagonal, fill: fillEdgeToEdge({ keepsLarge: true, everywhere: false }) },
    { order: byArea, fill: fillEdgeToEdge({ keepsLarge: false, everywhere: true }) },
    { order: byGirth, fill: fillEdgeToEdge({ keepsLarge: true, everywhere: true }) },
    { order: byLong, fill: fillEdgeToEdge({ keepsLarge: false, everywhere: false }) },
    { order: byShort, fill: fillEdgeToEdge({ keepsLarge: true, everywhere: false }) },
    { order: byGirth, fill: fillEdgeToEdge({ keepsLarge: false, everywhere: false }) },
  ],
  free: [
    { order: byGirth, fill: fillFreely({ everywhere: false }) },
    { order: byShort, fill: fillFreely({ everywhere: false }) },
    { order: byLong, fill: fillFreely({ everywhere: false }) },
    { order: byDiagonal, fill: fillFreely({ everywhere: true }) },
    { order: byArea, fill: fillFreely({ everywhere: true }) },
  ],
};

/** Panels that come from a stock sheet with others, and the number of those that take one for themselves. */
function readSizes(cut: readonly CutSize[], width: number, height: number) {
  const sides: Side[] = [];
  let whole = 0;
  for (const size of cut) {
    const long = Math.max(size.width, size.height);
    const short = Math.min(size.width, size.height);
    const fitsEmpty = (long <= width && short <= height) || (short <= width && long <= height);
    if (!fitsEmpty || long * short === width * height) whole++;
    else sides.push({ long, short });
  }
  return { sides, whole };
}
