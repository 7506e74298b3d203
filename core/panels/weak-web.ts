import { distanceToSegment, type Polygon, type Ring } from '../geometry/polygon';
import type { Hundredth } from '../units';

/** Steel left between a hole and the edge of its panel, or between two holes. */
export interface WeakWeb {
  readonly width: Hundredth;
}

/** Common practice, no source: a web of thin sheet under 30 mm creases when the panel is lifted. */
const leastWeb: Hundredth = 3000;

/** For each hole of a panel the narrowest web beside it, where that is under 30 mm. */
export function weakWebs({ outer, holes }: Polygon): WeakWeb[] {
  return holes.flatMap((hole, i) => {
    const others = [outer, ...holes.slice(i + 1)];
    const width = Math.round(Math.min(...others.map((ring) => distanceBetween(hole, ring))));
    return width < leastWeb ? [{ width }] : [];
  });
}

/** Between two rings that do not cross the nearest place has a corner on one of them. */
function distanceBetween(a: Ring, b: Ring): number {
  let least = Infinity;
  for (const [corners, edges] of [
    [a, b],
    [b, a],
  ] as const) {
    for (const point of corners) {
      edges.forEach((from, i) => {
        least = Math.min(least, distanceToSegment(point, from, edges[(i + 1) % edges.length]!));
      });
    }
  }
  return least;
}
