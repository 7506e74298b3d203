import type { UnitSheet } from './exhaustive';

/*
 * Tries every way of cutting small panels out of sheets edge to edge: each cut runs right across its piece. A panel with a
 * missing corner comes out as its rectangle; then that corner is opened and may be cut on. Whole units; only for a
 * handful of panels on sheets of a few units; there it is certain.
 */

export interface NotchedPanel {
  readonly width: number;
  readonly height: number;
  /** Width and height of the corner that is missing; 0 × 0 for a rectangle. */
  readonly notch: readonly [number, number];
  readonly stock: readonly string[];
}

/** Whether all panels come out of these sheets, quarter turns and turning over allowed. */
export function canBeCutEdgeToEdge(
  panels: readonly NotchedPanel[],
  sheets: readonly UnitSheet[],
  kerf: number,
): boolean {
  const known = new Map<string, boolean>();
  let left = new Set([(1 << panels.length) - 1]);
  for (const { width, height, stock } of sheets) {
    const may = panels.reduce((bits, panel, i) => (panel.stock.includes(stock) ? bits | (1 << i) : bits), 0);
    const next = new Set<number>();
    for (const set of left)
      for (const part of partsOf(set & may)) if (comesOut(part, width, height)) next.add(set & ~part);
    left = next;
  }
  return left.has(0);

  function comesOut(set: number, width: number, height: number): boolean {
    if (set === 0) return true;
    if (width <= 0 || height <= 0) return false;
    const key = `${set} ${Math.min(width, height)} ${Math.max(width, height)}`;
    let can = known.get(key);
    if (can === undefined) known.set(key, (can = isWhole(set, width, height) || isCut(set, width, height)));
    return can;
  }

  /** One of the panels is as large as the piece, and the others come out of its missing corner. */
  function isWhole(set: number, width: number, height: number): boolean {
    return panels.some(({ width: w, height: h, notch: [x, y] }, i) => {
      if (!(set & (1 << i))) return false;
      const isThis = (w === width && h === height) || (h === width && w === height);
      return isThis && comesOut(set & ~(1 << i), x - kerf, y - kerf);
    });
  }

  function isCut(set: number, width: number, height: number): boolean {
    for (const part of partsOf(set)) {
      const rest = set & ~part;
      for (let at = 1; at < width; at++)
        if (comesOut(part, at, height) && comesOut(rest, width - at - kerf, height)) return true;
      for (let at = 1; at < height; at++)
        if (comesOut(part, width, at) && comesOut(rest, width, height - at - kerf)) return true;
    }
    return false;
  }
}

/** Every set of panels within a set, the empty one and itself too. */
function* partsOf(set: number): Generator<number> {
  for (let part = set; ; part = (part - 1) & set) {
    yield part;
    if (part === 0) return;
  }
}
