import { boxOf, polygonArea, type Polygon } from '../geometry/polygon';
import type { Hundredth } from '../units';

/** A cut panel as the fast nest sees it: its bounding rectangle and its true area; hundredths. */
export interface CutSize {
  readonly width: Hundredth;
  readonly height: Hundredth;
  readonly area: number;
}

/**
 * How many stock sheets these cut panels need. Cutting is a later stage, so its answer comes as a function. It
 * must depend on nothing but the sizes, whatever their order, and never promise fewer sheets than their areas
 * fill.
 */
export type CountStockSheets = (cut: readonly CutSize[]) => number;

export function cutSizeOf(panel: Polygon): CutSize {
  const { left, bottom, right, top } = boxOf(panel.outer);
  return { width: right - left, height: top - bottom, area: polygonArea(panel) };
}
