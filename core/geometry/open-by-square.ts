import type { Hundredth } from '../units';
import { difference, union } from './clip';
import { doubleSignedArea, type Point, type Polygon, type Region, type Ring } from './polygon';

/**
 * The region opened by an axis-parallel square: every square of side `side` that fits into the region, all
 * taken together. What a square cannot reach (acute corners, strips narrower than `side`) is lost.
 *
 * @param grow lets each fitting square reach so much farther on every side before they are joined; 0 is the
 *   opening itself. A little growth keeps the rounding of sloping edges from looking like a loss.
 * @returns [] if no square fits; a strip of exactly `side` may vanish, since the places of its squares have no
 *   area: ask for a little less
 * Source: J. Serra, Image Analysis and Mathematical Morphology (1982), opening as erosion and dilation; from
 * memory.
 */
export function openBySquare(region: Region, side: Hundredth, grow: Hundredth = 0): Region {
  return swept(placesOfSquare(region, side), -grow, side + grow);
}

/**
 * Where the lower left corner of a square of side `side` may stand so that the square fits. A square with that
 * corner inside leaves the region exactly if it meets the boundary, so the boundary, swept back over the
 * square, is taken off.
 */
function placesOfSquare(region: Region, side: Hundredth): Region {
  return difference(region, sweptEdges(region, -side, 0));
}

/** Minkowski sum of a region and the square from (from, from) to (to, to); 0 lies in the square. */
function swept(region: Region, from: Hundredth, to: Hundredth): Region {
  return region.length === 0 ? [] : union(region, sweptEdges(region, from, to));
}

function sweptEdges(region: Region, from: Hundredth, to: Hundredth): Region {
  return region.flatMap(({ outer, holes }) =>
    [outer, ...holes].flatMap((ring) =>
      ring.map((a, i) => sweptEdge(a, ring[(i + 1) % ring.length]!, from, to)),
    ),
  );
}

/**
 * A square moved along an edge covers a hexagon (a rectangle where the edge is axis-parallel).
 *
 *        b ┌──┐          rising to the right: the corners upper left and
 *         ╱   │          lower right of both ends lie on the rim
 *        ╱    ╱
 *       │    ╱
 *     a └───┘
 */
function sweptEdge(a: Point, b: Point, from: Hundredth, to: Hundredth): Polygon {
  const [left, right] = a.x <= b.x ? [a, b] : [b, a];
  const at = (point: Point, dx: Hundredth, dy: Hundredth): Point => ({ x: point.x + dx, y: point.y + dy });
  const ring: Ring =
    left.y <= right.y
      ? [
          at(left, from, from),
          at(left, to, from),
          at(right, to, from),
          at(right, to, to),
          at(right, from, to),
          at(left, from, to),
        ]
      : [
          at(left, from, from),
          at(right, from, from),
          at(right, to, from),
          at(right, to, to),
          at(left, to, to),
          at(left, from, to),
        ];
  const corners = ring.filter((point, i) => {
    const before = ring[(i + ring.length - 1) % ring.length]!;
    return point.x !== before.x || point.y !== before.y;
  });
  return { outer: doubleSignedArea(corners) > 0 ? corners : [...corners].reverse(), holes: [] };
}
