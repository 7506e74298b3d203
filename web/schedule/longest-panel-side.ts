import { boxOf } from '../../core/geometry/polygon';
import type { Panel } from '../../core/panels/panel';
import { toMm, type Mm } from '../../core/units';

/** The longest side of any panel's rectangle, along which it grows most; 0 without panels. */
export function longestPanelSide(panels: readonly Panel[] = []): Mm {
  const sides = panels.map(({ outline }) => {
    const { left, bottom, right, top } = boxOf(outline.outer);
    return Math.max(right - left, top - bottom);
  });
  return toMm(Math.max(0, ...sides));
}
