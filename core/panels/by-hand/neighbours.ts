import { boxOf, type Point, type Polygon } from '../../geometry/polygon';
import type { Hundredth } from '../../units';
import type { Panel } from '../panel';
import { seamsOf } from '../seams';

export type PanelSide = 'left' | 'right' | 'below' | 'above';

/** The panel on each side of another that shares most of that side with it. */
export function neighboursOf(
  panels: readonly Panel[],
  panel: Panel,
  gap: Hundredth,
): Readonly<Partial<Record<PanelSide, Panel>>> {
  const own = panels.indexOf(panel);
  const most: Partial<Record<PanelSide, { panel: Panel; length: number }>> = {};
  const lengths = new Map<string, number>();
  const near = panels.map(({ outline }) => outline);
  for (const { axis, before, after, from, to } of seamsOf(near, gap)) {
    if (before !== own && after !== own) continue;
    const side = axis === 'x' ? (after === own ? 'left' : 'right') : after === own ? 'below' : 'above';
    const other = before === own ? after : before;
    const key = `${side} ${other}`;
    const length = (lengths.get(key) ?? 0) + to - from;
    lengths.set(key, length);
    if (length > (most[side]?.length ?? 0)) most[side] = { panel: panels[other]!, length };
  }
  return Object.fromEntries(Object.entries(most).map(([side, { panel: other }]) => [side, other]));
}

/** A point well within a polygon: in the middle of its widest level stretch. */
export function pointWithin({ outer, holes }: Polygon): Point {
  const rings = [outer, ...holes];
  const heights = [...new Set(rings.flat().map(({ y }) => y))].sort((a, b) => a - b);
  let best = { x: 0, y: 0, width: -1 };
  for (let i = 0; i + 1 < heights.length; i++) {
    const y = (heights[i]! + heights[i + 1]!) / 2;
    const crossings = rings
      .flatMap((ring) =>
        ring.flatMap((a, n) => {
          const b = ring[(n + 1) % ring.length]!;
          if (a.y > y === b.y > y) return [];
          return [a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)];
        }),
      )
      .sort((one, other) => one - other);
    for (let n = 0; n + 1 < crossings.length; n += 2) {
      // A low stretch is as poor a hold as a narrow one.
      const width = Math.min(crossings[n + 1]! - crossings[n]!, 2 * (heights[i + 1]! - heights[i]!));
      if (width > best.width) best = { x: (crossings[n]! + crossings[n + 1]!) / 2, y, width };
    }
  }
  if (best.width >= 0) return { x: Math.round(best.x), y: Math.round(best.y) };
  const { left, right, bottom, top } = boxOf(outer);
  return { x: Math.round((left + right) / 2), y: Math.round((bottom + top) / 2) };
}
