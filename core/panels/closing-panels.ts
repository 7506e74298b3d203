import { boxOf } from '../geometry/polygon';
import type { Hundredth } from '../units';
import type { Panel } from './panel';
import { isFixedEdge, type PanelRun } from './panel-runs';

/**
 * Which panels close a run: panels cut to length at its far end (right or above) against an edge that does not give
 * way, or where that end is free, at its near end. What the stock sheets before them are too long or too short by
 * gathers there, so they are measured on the wall before they are cut. Fittings are no ends: their notches are cut as
 * drawn.
 *
 * @param sidesOf both sides of a stock sheet as it is laid
 * @returns numbers of the panels
 */
export function closingPanels(
  panels: readonly Panel[],
  runs: readonly PanelRun[],
  zoneId: string,
  sidesOf: (stock: string) => readonly Hundredth[],
): Set<number> {
  const closing = new Set<number>();
  for (const { axis, panels: run, ends } of runs) {
    const isClosedBy = (end: 0 | 1) => ends[end]?.kind !== 'fitting' && isFixedEdge(ends[end], zoneId);
    const isCutToLength = (i: number) => {
      const { outline, stock } = panels[i]!;
      const { left, right, bottom, top } = boxOf(outline.outer);
      return !sidesOf(stock).includes(axis === 'x' ? right - left : top - bottom);
    };
    const [first, last] = [run[0]!, run.at(-1)!];
    if (isClosedBy(1)) {
      if (isCutToLength(last)) closing.add(last);
    } else if (isClosedBy(0) && run.length > 1 && isCutToLength(first)) closing.add(first);
  }
  return closing;
}
