import type { Box, Point, Region } from '../geometry/polygon';
import type { Hundredth } from '../units';

/** A vertical edge at x = `at` from y = `from` to `to`, or a horizontal one the other way about; from < to. */
export interface AxisEdge {
  readonly at: Hundredth;
  readonly from: Hundredth;
  readonly to: Hundredth;
}

export interface SlopingEdge {
  readonly a: Point;
  readonly b: Point;
}

/** An edge with its place in its ring; the area lies to its left. */
export interface RingEdge extends SlopingEdge {
  readonly ring: number;
  readonly index: number;
  /** The edge that goes on from its end. */
  readonly next: number;
}

/** The edges of a region, sorted by kind, so that a cell can be cut out of it without a polygon clipper. */
export interface AreaEdges {
  readonly vertical: readonly AxisEdge[];
  readonly horizontal: readonly AxisEdge[];
  readonly sloping: readonly SlopingEdge[];
  readonly all: readonly RingEdge[];
}

export function areaEdges(region: Region): AreaEdges {
  const vertical: AxisEdge[] = [];
  const horizontal: AxisEdge[] = [];
  const sloping: SlopingEdge[] = [];
  const all: RingEdge[] = [];
  let number = 0;
  for (const { outer, holes } of region) {
    for (const ring of [outer, ...holes]) {
      ring.forEach((a, i) => {
        const next = (i + 1) % ring.length;
        const b = ring[next]!;
        all.push({ a, b, ring: number, index: i, next });
        if (a.x === b.x) vertical.push({ at: a.x, from: Math.min(a.y, b.y), to: Math.max(a.y, b.y) });
        else if (a.y === b.y) horizontal.push({ at: a.y, from: Math.min(a.x, b.x), to: Math.max(a.x, b.x) });
        else sloping.push({ a, b });
      });
      number++;
    }
  }
  return { vertical, horizontal, sloping, all };
}

/** The edges that touch a horizontal band: what a course of panels has to look at. */
export function edgesInBand(edges: AreaEdges, bottom: Hundredth, top: Hundredth): AreaEdges {
  const touchesBand = ({ a, b }: SlopingEdge) => Math.min(a.y, b.y) < top && Math.max(a.y, b.y) > bottom;
  return {
    // Everything left or right of a cell decides whether its inside is area, so x is not restricted.
    vertical: edges.vertical.filter(({ from, to }) => from < top && to > bottom),
    horizontal: edges.horizontal.filter(({ at }) => at >= bottom && at <= top),
    sloping: edges.sloping.filter(touchesBand),
    all: edges.all.filter(touchesBand),
  };
}

/** Whether a segment passes through the inside of a box; touching its rim is not passing. */
export function passesThrough({ a, b }: SlopingEdge, box: Box): boolean {
  if (Math.max(a.x, b.x) <= box.left || Math.min(a.x, b.x) >= box.right) return false;
  if (Math.max(a.y, b.y) <= box.bottom || Math.min(a.y, b.y) >= box.top) return false;
  // Of the box's corners, some must lie on either side of the segment's line.
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const lowX = dx * (box.bottom - a.y);
  const highX = dx * (box.top - a.y);
  const lowY = dy * (box.left - a.x);
  const highY = dy * (box.right - a.x);
  return (
    Math.max(lowX, highX) - Math.min(lowY, highY) > 0 && Math.min(lowX, highX) - Math.max(lowY, highY) < 0
  );
}

/**
 * Whether a point that lies on no edge is inside, by the number of edges to the left of it. Coordinates may be
 * halves, so that middles of blocks can be asked.
 */
export function isInside(edges: AreaEdges, x: number, y: number): boolean {
  let inside = false;
  for (const { at, from, to } of edges.vertical) if (at < x && from < y && to >= y) inside = !inside;
  for (const { a, b } of edges.sloping) {
    const low = Math.min(a.y, b.y);
    const high = Math.max(a.y, b.y);
    if (low < y && high >= y && a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y) < x) inside = !inside;
  }
  return inside;
}
