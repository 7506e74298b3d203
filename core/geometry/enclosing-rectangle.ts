import type { Point, Ring } from './polygon';

/**
 * Area of the smallest rectangle, at any angle, that encloses a ring; unit of the ring squared. One of its sides lies along
 * a side of the convex hull: H. Freeman, R. Shapira, Communications of the ACM 18 (1975) 409 (from memory).
 */
export function enclosingRectangleArea(ring: Ring): number {
  const hull = convexHull(ring);
  if (hull.length < 3) return 0;
  return Math.min(
    ...hull.map((from, i) => {
      const to = hull[(i + 1) % hull.length]!;
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
      const along = hull.map(({ x, y }) => (x - from.x) * ux + (y - from.y) * uy);
      const across = hull.map(({ x, y }) => (y - from.y) * ux - (x - from.x) * uy);
      return (Math.max(...along) - Math.min(...along)) * (Math.max(...across) - Math.min(...across));
    }),
  );
}

/** Anticlockwise, without points on its sides: A. M. Andrew, Information Processing Letters 9 (1979) 216 (from memory). */
function convexHull(ring: Ring): Point[] {
  const points = [...ring].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (sorted: readonly Point[]) => {
    const chain: Point[] = [];
    for (const point of sorted) {
      while (chain.length >= 2 && turn(chain.at(-2)!, chain.at(-1)!, point) <= 0) chain.pop();
      chain.push(point);
    }
    return chain.slice(0, -1);
  };
  return [...half(points), ...half(points.toReversed())];
}

function turn(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}
