import type { CutSize } from './cut-size';

/**
 * A number of stock sheets that no placing of these bounding rectangles can undercut, quarter turns allowed and
 * kerf left out: the areas after every side up to a threshold counts nothing and every side that leaves less
 * than the threshold counts whole.
 *
 * @param width, height of the stock sheet, in the unit of the sizes
 * Source: S. P. Fekete and J. Schepers, A general framework for bounds for higher-dimensional orthogonal packing
 * problems, Math. Methods of Operations Research 60 (2004), the dual feasible function u with both axes alike;
 * from memory.
 */
export function leastStockSheets(cut: readonly CutSize[], width: number, height: number): number {
  if (cut.length === 0) return 0;
  const thresholds = new Set<number>([0, 0.5]);
  for (const size of cut) {
    for (const share of [size.width / width, size.height / height]) {
      if (share < 0.5) thresholds.add(share);
      else if (share < 1) thresholds.add(1 - share);
    }
    if (thresholds.size > 12) break;
  }
  let least = 1;
  for (const threshold of thresholds) {
    let sum = 0;
    for (const size of cut) {
      const upright = share(size.width / width, threshold) * share(size.height / height, threshold);
      const canTurn = size.height <= width && size.width <= height;
      const turned = canTurn
        ? share(size.height / width, threshold) * share(size.width / height, threshold)
        : Infinity;
      sum += Math.min(upright, turned);
    }
    least = Math.max(least, Math.ceil(sum - 1e-9));
  }
  return least;
}

/** Of sides that fit next to each other, the shares after this still add up to 1 at most. */
function share(part: number, threshold: number): number {
  if (part > 1 - threshold + 1e-12) return 1;
  return part < threshold - 1e-12 ? 0 : part;
}
