import { boxOf, translate, type Polygon, type Ring } from '../geometry/polygon';

/** How a panel lies on a stock sheet: turned over first (x → −x), then turned anticlockwise. */
export interface Turn {
  readonly quarterTurns: 0 | 1 | 2 | 3;
  readonly turnedOver: boolean;
}

const quarterTurns = [0, 1, 2, 3] as const;
/** Plain turns come first: a panel is turned over only where that gives another shape. */
export const allTurns: readonly Turn[] = [false, true].flatMap((turnedOver) =>
  quarterTurns.map((turns) => ({ quarterTurns: turns, turnedOver })),
);

/** The polygon turned, its box's lower left corner at the origin. */
export function turned(polygon: Polygon, { quarterTurns, turnedOver }: Turn): Polygon {
  const turnRing = (ring: Ring): Ring => {
    const points = ring.map(({ x, y }) => {
      const u = turnedOver ? -x : x;
      if (quarterTurns === 0) return { x: u, y };
      if (quarterTurns === 1) return { x: -y, y: u };
      if (quarterTurns === 2) return { x: -u, y: -y };
      return { x: y, y: -u };
    });
    // Turning over reverses the direction of every ring.
    return turnedOver ? points.reverse() : points;
  };
  const result = { outer: turnRing(polygon.outer), holes: polygon.holes.map(turnRing) };
  const { left, bottom } = boxOf(result.outer);
  // Adding 0 makes a plain zero of a negative one.
  return translate(result, -left + 0, -bottom + 0);
}

/** Equal for equal polygons, wherever their rings begin and in whatever order their holes are listed. */
export function shapeKey(polygon: Polygon): string {
  const holes = polygon.holes.map(ringKey).sort();
  return [ringKey(polygon.outer), ...holes].join('|');
}

function ringKey(ring: Ring): string {
  let first = 0;
  ring.forEach((point, i) => {
    const least = ring[first]!;
    if (point.y < least.y || (point.y === least.y && point.x < least.x)) first = i;
  });
  return [...ring.slice(first), ...ring.slice(0, first)].map(({ x, y }) => `${x + 0},${y + 0}`).join(' ');
}
