import { freeSpaces, occupy, type FreeSpaces } from './free-spaces';
import type { CuttingMethod, StockFormat } from './plan';

/** A cut panel as the fast nest sees it: its bounding rectangle and its true area. */
export interface CutSize {
  readonly width: number;
  readonly height: number;
  /** Hundredths squared; less than width × height for a notched panel. */
  readonly area: number;
}

/**
 * How many stock sheets these cut panels take in one quick nest of their bounding rectangles, quarter turns
 * allowed. Never fewer than possible for rectangles; often not the fewest. Deterministic, and the order of the
 * panels does not matter. For comparing thousands of starts, not for a cut list.
 *
 * @param cut sizes in hundredths; one larger than the stock sheet counts as a sheet of its own
 */
export function countStockSheets(
  cut: readonly CutSize[],
  stock: Pick<StockFormat, 'width' | 'height'>,
  method: CuttingMethod,
  kerf: number,
): number {
  if (cut.length === 0) return 0;
  const sizes = cut
    .map(({ width, height }): Side => (width >= height ? [width, height] : [height, width]))
    .sort((a, b) => b[0] * b[1] - a[0] * a[1] || b[0] - a[0]);
  const least = Math.ceil(cut.reduce((sum, { area }) => sum + area, 0) / (stock.width * stock.height) - 1e-9);
  const byArea = fill(sizes, stock, method, kerf);
  if (byArea <= least) return byArea;
  sizes.sort((a, b) => b[1] - a[1] || b[0] - a[0]);
  return Math.min(byArea, fill(sizes, stock, method, kerf));
}

type Side = readonly [long: number, short: number];

/** First stock sheet that takes the panel, there the place that leaves the least over along one side. */
function fill(
  sizes: readonly Side[],
  stock: Pick<StockFormat, 'width' | 'height'>,
  method: CuttingMethod,
  kerf: number,
): number {
  const sheets: FreeSpaces[] = [];
  let whole = 0;
  for (const [long, short] of sizes) {
    const fitsEmpty =
      (long <= stock.width && short <= stock.height) || (short <= stock.width && long <= stock.height);
    if (!fitsEmpty || long * short === stock.width * stock.height) {
      whole++;
      continue;
    }
    if (sheets.some((sheet) => place(sheet, long + kerf, short + kerf, method, kerf))) continue;
    const sheet = freeSpaces(0, 0, stock.width + kerf, stock.height + kerf);
    place(sheet, long + kerf, short + kerf, method, kerf);
    sheets.push(sheet);
  }
  return sheets.length + whole;
}

function place(free: FreeSpaces, long: number, short: number, method: CuttingMethod, kerf: number): boolean {
  let best = -1;
  let bestSpare = Infinity;
  let bestWidth = 0;
  for (let i = 0; i < free.count; i++) {
    const width = free.right[i]! - free.left[i]!;
    const height = free.top[i]! - free.bottom[i]!;
    if (width >= long && height >= short) {
      const spare = Math.min(width - long, height - short);
      if (spare < bestSpare) [best, bestSpare, bestWidth] = [i, spare, long];
    }
    if (width >= short && height >= long) {
      const spare = Math.min(width - short, height - long);
      if (spare < bestSpare) [best, bestSpare, bestWidth] = [i, spare, short];
    }
  }
  if (best < 0) return false;
  const x = free.left[best]!;
  const y = free.bottom[best]!;
  const right = x + bestWidth;
  const top = y + (bestWidth === long ? short : long);
  if (method === 'free') occupy(free, x, y, right, top, kerf + 1);
  else divide(free, best, right, top);
  return true;
}

/** Edge to edge: the piece is cut in two so that the larger leftover stays as large as it can. */
function divide(free: FreeSpaces, at: number, right: number, top: number): void {
  const [l, b, r, t] = [free.left[at]!, free.bottom[at]!, free.right[at]!, free.top[at]!];
  const last = --free.count;
  free.left[at] = free.left[last]!;
  free.bottom[at] = free.bottom[last]!;
  free.right[at] = free.right[last]!;
  free.top[at] = free.top[last]!;
  if ((r - right) * (t - b) >= (t - top) * (r - l)) {
    add(free, right, b, r, t);
    add(free, l, top, right, t);
  } else {
    add(free, l, top, r, t);
    add(free, right, b, r, top);
  }
}

function add(free: FreeSpaces, left: number, bottom: number, right: number, top: number): void {
  if (left >= right || bottom >= top) return;
  const at = free.count++;
  free.left[at] = left;
  free.bottom[at] = bottom;
  free.right[at] = right;
  free.top[at] = top;
}
