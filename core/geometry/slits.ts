import type { Point, Region } from './polygon';

/** An edge with its ends in order of x, then y. */
interface Edge {
  readonly a: Point;
  readonly b: Point;
}

/**
 * Whether two edges of a region run along each other: a slit without width in one polygon, or two rings with a
 * common edge. The sweep of the clipping kernel leaves one now and then where edges of its sources coincide.
 *
 *      ┌──┐
 *      │  └──┬──┐   what should be two boxes, hanging together by a slit
 *      └─────┤  │
 *            └──┘
 *
 * Edges are compared in the order of their left ends, so that a circle costs little more than its corners.
 */
export function hasSlit(region: Region): boolean {
  const edges: Edge[] = [];
  for (const { outer, holes } of region) {
    for (const ring of holes.length === 0 ? [outer] : [outer, ...holes]) {
      for (let i = 0; i < ring.length; i++) {
        const a = ring[i]!;
        const b = ring[i + 1 === ring.length ? 0 : i + 1]!;
        edges.push(a.x < b.x || (a.x === b.x && a.y < b.y) ? { a, b } : { a: b, b: a });
      }
    }
  }
  if (edges.length <= 4) return false;
  edges.sort((e, f) => e.a.x - f.a.x || e.a.y - f.a.y);
  for (let i = 0; i < edges.length; i++) {
    const edge = edges[i]!;
    for (let j = i + 1; j < edges.length && edges[j]!.a.x <= edge.b.x; j++) {
      if (runAlong(edge, edges[j]!)) return true;
    }
  }
  return false;
}

/** Whether two edges on one line share more than a point; `later` starts no further left. */
function runAlong({ a, b }: Edge, later: Edge): boolean {
  if (a.x === b.x) return later.b.x === a.x && later.a.y < b.y;
  if (later.a.x >= b.x) return false;
  return turn(a, b, later.a) === 0 && turn(a, b, later.b) === 0;
}

function turn(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}
