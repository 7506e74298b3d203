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
  return Math.ceil(leastFilling(cut, width, height) - 1e-9);
}

/**
 * The same before it is rounded up: the lower, the more room is left on that many stock sheets.
 *
 * @param enough once the bound is above this, nothing higher is looked for
 */
export function leastFilling(
  cut: readonly CutSize[],
  width: number,
  height: number,
  enough = Infinity,
): number {
  const count = cut.length;
  if (count === 0) return 0;
  let thresholds = 2;
  threshold[0] = 0;
  threshold[1] = 0.5;
  for (let i = 0; i < count; i++) {
    const size = cut[i]!;
    const across = size.width / width;
    const up = size.height / height;
    acrossUpright[i] = across;
    upUpright[i] = up;
    if (thresholds <= mostThresholds && across < 1) thresholds = note(thresholds, across);
    if (thresholds <= mostThresholds && up < 1) thresholds = note(thresholds, up);
  }
  // On a square stock sheet a panel counts the same either way.
  const turns = width !== height;
  let least = 0;
  for (let t = 0; t < thresholds && least <= enough + 1e-9; t++) {
    const low = threshold[t]! - 1e-12;
    const high = 1 - threshold[t]! + 1e-12;
    let sum = 0;
    for (let i = 0; i < count; i++) {
      const across = acrossUpright[i]!;
      const up = upUpright[i]!;
      let weight = share(across, low, high) * share(up, low, high);
      if (turns) {
        const { width: w, height: h } = cut[i]!;
        const canTurn = h <= width && w <= height;
        // One that only fits turned counts as it is then.
        if (across > 1 || up > 1) weight = canTurn ? Infinity : weight;
        if (canTurn) weight = Math.min(weight, share(h / width, low, high) * share(w / height, low, high));
      }
      sum += weight;
    }
    if (sum > least) least = sum;
  }
  return least;
}

const mostThresholds = 12;

/** Kept between calls: this runs for every start that may be nested. */
const threshold = new Float64Array(mostThresholds + 2);
const acrossUpright: number[] = [];
const upUpright: number[] = [];

function note(known: number, part: number): number {
  const value = part < 0.5 ? part : 1 - part;
  for (let t = 0; t < known; t++) if (Math.abs(threshold[t]! - value) < 1e-9) return known;
  threshold[known] = value;
  return known + 1;
}

/** Of sides that fit next to each other, the shares after this still add up to 1 at most. */
function share(part: number, low: number, high: number): number {
  if (part > high) return 1;
  return part < low ? 0 : part;
}
