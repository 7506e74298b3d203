import type { Box, Polygon } from '../geometry/polygon';
import type { Hundredth } from '../units';

/** How much of a panel's rim has to be cut: all that does not lie along the sides of its cell; whole hundredths. */
export function cutLengthOf({ outer, holes }: Polygon, { left, bottom, right, top }: Box): Hundredth {
  let length = 0;
  for (const ring of [outer, ...holes]) {
    let a = ring.at(-1)!;
    for (const b of ring) {
      const isUncut =
        (a.x === b.x && (a.x === left || a.x === right)) || (a.y === b.y && (a.y === bottom || a.y === top));
      if (!isUncut) length += Math.hypot(b.x - a.x, b.y - a.y);
      a = b;
    }
  }
  return Math.round(length);
}
