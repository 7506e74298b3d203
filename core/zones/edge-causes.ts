import { boxesMeet, boxOf, type Box, type Point, type Polygon, type Ring } from '../geometry/polygon';
import type { EdgeCause } from '../survey/surveyed-wall';
import type { ZoneArea } from './zone-area';

/** An end of a panel's edge is rounded, and so is its boundary's: together they may part by this much. */
const TOLERANCE = 2;

/**
 * Why each edge of a panel is where it is.
 *
 * An edge that runs along a boundary of the zone's area is caused by that boundary, even where it is a side of
 * the panel's cell as well; any other edge is the stock sheet's own. Of several boundaries along one edge, the
 * one along the greatest part of it counts, and among equals the one that stands first in `area.boundaries`.
 *
 * @param polygon a piece of the area, cut out along level and upright lines
 * @param cell the whole panel's place, if known: an edge that is on none of its sides is not given to the stock
 *   sheet, however short the part of it that a boundary accounts for
 * @returns ring 0 is the outside, ring i its i-th hole; one cause an edge, edge j from point j to point j + 1
 */
export function causesOf(polygon: Polygon, area: ZoneArea, cell?: Polygon): EdgeCause[][] {
  const reach = boxOf(polygon.outer);
  const near = edgesOfArea(area).filter((boundary) => boxesMeet(boundary.box, reach, TOLERANCE));
  const sides = cell && boxOf(cell.outer);
  const ofRing = (ring: Ring) =>
    ring.map((from, i) => causeOf(from, ring[(i + 1) % ring.length]!, near, area, sides));
  return [ofRing(polygon.outer), ...polygon.holes.map(ofRing)];
}

interface Boundary {
  readonly cause: EdgeCause;
  readonly box: Box;
  readonly rings: readonly Ring[];
}

const known = new WeakMap<ZoneArea['boundaries'], readonly Boundary[]>();

/** Boundaries with their boxes, worked out once for all panels of a zone. */
function edgesOfArea({ boundaries }: ZoneArea): readonly Boundary[] {
  let found = known.get(boundaries);
  if (!found) {
    found = boundaries.map(({ cause, polygon }) => ({
      cause,
      box: boxOf(polygon.outer),
      rings: [polygon.outer, ...polygon.holes],
    }));
    known.set(boundaries, found);
  }
  return found;
}

function causeOf(
  from: Point,
  to: Point,
  near: readonly Boundary[],
  { zone }: ZoneArea,
  sides: Box | undefined,
): EdgeCause {
  const box = boxOf([from, to]);
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  let longest: EdgeCause | undefined;
  let most = 0;
  for (const boundary of near) {
    if (!boxesMeet(boundary.box, box, TOLERANCE)) continue;
    const shared = lengthAlong(from, to, length, boundary.rings);
    // A longer part by rounding alone is no better a reason.
    if (shared > most + TOLERANCE || (most === 0 && shared > 0)) {
      most = shared;
      longest = boundary.cause;
    }
  }
  const onCell = !sides || liesOnSide(from, to, sides);
  if (onCell) return longest && most >= length / 2 ? longest : { kind: 'stock-edge' };
  return longest ?? { kind: 'zone', id: zone.id };
}

function liesOnSide(from: Point, to: Point, { left, right, bottom, top }: Box): boolean {
  return (
    (from.x === to.x && (from.x === left || from.x === right)) ||
    (from.y === to.y && (from.y === bottom || from.y === top))
  );
}

/** How much of a segment runs along the edges of rings, hundredths. */
function lengthAlong(from: Point, to: Point, length: number, rings: readonly Ring[]): number {
  const ux = (to.x - from.x) / length;
  const uy = (to.y - from.y) / length;
  let along = 0;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i++) {
      const a = ring[i]!;
      const b = ring[i + 1 === ring.length ? 0 : i + 1]!;
      along += overlap(
        (a.x - from.x) * ux + (a.y - from.y) * uy,
        (a.y - from.y) * ux - (a.x - from.x) * uy,
        (b.x - from.x) * ux + (b.y - from.y) * uy,
        (b.y - from.y) * ux - (b.x - from.x) * uy,
        length,
      );
    }
  }
  return along;
}

/**
 * How much of an edge, given by its ends along and across the segment, lies beside the segment. All of it that
 * is abreast of the segment must be within the tolerance: an edge that crosses, or leaves at an angle, is not
 * what the segment was cut along.
 */
function overlap(a: number, offA: number, b: number, offB: number, length: number): number {
  const start = Math.max(0, Math.min(a, b));
  const end = Math.min(length, Math.max(a, b));
  if (end <= start) return 0;
  const offAt = (t: number) => offA + ((offB - offA) * (t - a)) / (b - a);
  if (Math.abs(offAt(start)) > TOLERANCE || Math.abs(offAt(end)) > TOLERANCE) return 0;
  return end - start;
}
