import type { Hundredth } from '../units';

/** A point on whole hundredths of a millimetre, x to the right, y up. */
export interface Point {
  readonly x: Hundredth;
  readonly y: Hundredth;
}

/** A closed chain of points; the first is not repeated. */
export type Ring = readonly Point[];

/**
 * One connected area. Invariants, kept by everything in this folder: `outer` runs anticlockwise, `holes`
 * clockwise; no ring crosses or touches itself along an edge; no two consecutive points are equal.
 */
export interface Polygon {
  readonly outer: Ring;
  readonly holes: readonly Ring[];
}

/** Disjoint polygons (they may touch in single points). `[]` is the empty region. */
export type Region = readonly Polygon[];

export interface Box {
  readonly left: Hundredth;
  readonly bottom: Hundredth;
  readonly right: Hundredth;
  readonly top: Hundredth;
}

/**
 * Twice the signed area by the shoelace formula, positive when anticlockwise. Taken about the first point,
 * so that a ring far from the origin loses nothing.
 */
export function doubleSignedArea(ring: Ring): number {
  const origin = ring[0];
  if (!origin) return 0;
  let sum = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[i + 1]!;
    sum += (a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y);
  }
  return sum;
}

/** Area in hundredths squared; holes taken off. */
export function polygonArea(polygon: Polygon): number {
  let double = Math.abs(doubleSignedArea(polygon.outer));
  for (const hole of polygon.holes) double -= Math.abs(doubleSignedArea(hole));
  return double / 2;
}

export function regionArea(region: Region): number {
  return region.reduce((sum, polygon) => sum + polygonArea(polygon), 0);
}

/** @throws Error if there is no point */
export function boxOf(points: Iterable<Point>): Box {
  let left = Infinity;
  let bottom = Infinity;
  let right = -Infinity;
  let top = -Infinity;
  for (const { x, y } of points) {
    if (x < left) left = x;
    if (x > right) right = x;
    if (y < bottom) bottom = y;
    if (y > top) top = y;
  }
  if (left > right) throw new Error('A box needs at least one point.');
  return { left, bottom, right, top };
}

export function boxOfRegion(region: Region): Box {
  return boxOf(region.flatMap((polygon) => polygon.outer));
}

/** Whether two boxes share a point, or come within `reach` of it in x and y. */
export function boxesMeet(a: Box, b: Box, reach: Hundredth = 0): boolean {
  return (
    a.left <= b.right + reach &&
    b.left <= a.right + reach &&
    a.bottom <= b.top + reach &&
    b.bottom <= a.top + reach
  );
}

/** Whether `inner` lies in `outer`; edges may coincide. */
export function boxContains(outer: Box, inner: Box): boolean {
  return (
    outer.left <= inner.left &&
    inner.right <= outer.right &&
    outer.bottom <= inner.bottom &&
    inner.top <= outer.top
  );
}

/** Whether a polygon is its own box: four corners, edges level and upright, no holes. */
export function isBox(polygon: Polygon): boolean {
  return polygon.outer.length === 4 && polygon.holes.length === 0 && isRectilinear(polygon);
}

/** The length of all rings, hundredths. */
export function perimeter({ outer, holes }: Polygon): number {
  let length = 0;
  for (const ring of [outer, ...holes]) {
    ring.forEach((point, i) => {
      const next = ring[(i + 1) % ring.length]!;
      length += Math.hypot(next.x - point.x, next.y - point.y);
    });
  }
  return length;
}

/** Anticlockwise rectangle from its lower left corner. */
export function rectangle(left: Hundredth, bottom: Hundredth, width: Hundredth, height: Hundredth): Polygon {
  return {
    outer: [
      { x: left, y: bottom },
      { x: left + width, y: bottom },
      { x: left + width, y: bottom + height },
      { x: left, y: bottom + height },
    ],
    holes: [],
  };
}

export function rectangleOfBox(box: Box): Polygon {
  return rectangle(box.left, box.bottom, box.right - box.left, box.top - box.bottom);
}

/** Every edge horizontal or vertical. */
export function isRectilinear(polygon: Polygon): boolean {
  return [polygon.outer, ...polygon.holes].every((ring) =>
    ring.every((point, i) => {
      const next = ring[(i + 1) % ring.length]!;
      return point.x === next.x || point.y === next.y;
    }),
  );
}

export function translate(polygon: Polygon, dx: Hundredth, dy: Hundredth): Polygon {
  const move = (ring: Ring): Ring => ring.map(({ x, y }) => ({ x: x + dx, y: y + dy }));
  return { outer: move(polygon.outer), holes: polygon.holes.map(move) };
}

export type Side = 'inside' | 'outside' | 'boundary';

/** Where a point lies; the boundary of a hole is boundary. */
export function locate(point: Point, polygon: Polygon): Side {
  const outer = locateInRing(point, polygon.outer);
  if (outer !== 'inside') return outer;
  for (const hole of polygon.holes) {
    const side = locateInRing(point, hole);
    if (side === 'boundary') return 'boundary';
    if (side === 'inside') return 'outside';
  }
  return 'inside';
}

function locateInRing(point: Point, ring: Ring): Side {
  let inside = false;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[(i + 1) % ring.length]!;
    const cross = (b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x);
    if (
      cross === 0 &&
      Math.min(a.x, b.x) <= point.x &&
      point.x <= Math.max(a.x, b.x) &&
      Math.min(a.y, b.y) <= point.y &&
      point.y <= Math.max(a.y, b.y)
    ) {
      return 'boundary';
    }
    if (a.y > point.y !== b.y > point.y && cross > 0 === b.y > a.y) inside = !inside;
  }
  return inside ? 'inside' : 'outside';
}

/** Shortest distance from a point to a segment, in hundredths (not rounded). */
export function distanceToSegment(point: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length2 = dx * dx + dy * dy;
  const t =
    length2 === 0 ? 0 : Math.min(1, Math.max(0, ((point.x - a.x) * dx + (point.y - a.y) * dy) / length2));
  return Math.hypot(point.x - a.x - t * dx, point.y - a.y - t * dy);
}

/** Shortest distance to any ring of the polygon, in hundredths; 0 on the boundary, positive inside too. */
export function distanceToBoundary(point: Point, polygon: Polygon): number {
  let least = Infinity;
  for (const ring of [polygon.outer, ...polygon.holes]) {
    for (let i = 0; i < ring.length; i++) {
      least = Math.min(least, distanceToSegment(point, ring[i]!, ring[(i + 1) % ring.length]!));
    }
  }
  return least;
}
