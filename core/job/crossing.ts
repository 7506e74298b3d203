import type { Point, Ring } from '../geometry/polygon';

/** Where a ring meets itself; hundredths. */
export interface Meeting {
  readonly how: 'crosses' | 'touches' | 'doubles-back';
  readonly at: { readonly x: number; readonly y: number };
}

/**
 * The first place where a closed ring crosses or touches itself, or turns back on its own edge; null if it is
 * simple. Exact: coordinates are whole hundredths within ± 4·10⁷, so that each product of two differences stays
 * below 2⁵³ and the sign of their difference is right.
 *
 * A sweep from left to right compares only edges whose spans overlap: quick for real shapes, n² at worst.
 *
 * @param ring no two consecutive points equal
 */
export function firstMeeting(ring: Ring): Meeting | null {
  const n = ring.length;
  const edges = ring.map((from, i): Edge => {
    const to = ring[(i + 1) % n]!;
    const rising = from.y <= to.y;
    return {
      index: i,
      from,
      to,
      left: Math.min(from.x, to.x),
      right: Math.max(from.x, to.x),
      low: rising ? from.y : to.y,
      high: rising ? to.y : from.y,
    };
  });
  edges.sort((a, b) => a.left - b.left || a.index - b.index);

  const active: Edge[] = [];
  for (const edge of edges) {
    let kept = 0;
    for (const other of active) {
      if (other.right < edge.left) continue;
      active[kept++] = other;
      if (other.high < edge.low || edge.high < other.low) continue;
      const meeting = meetingOf(edge, other, n);
      if (meeting) return meeting;
    }
    active.length = kept;
    active.push(edge);
  }
  return null;
}

interface Edge {
  readonly index: number;
  readonly from: Point;
  readonly to: Point;
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

function meetingOf(a: Edge, b: Edge, n: number): Meeting | null {
  if ((a.index + 1) % n === b.index) return turnBack(a.from, a.to, b.to);
  if ((b.index + 1) % n === a.index) return turnBack(b.from, b.to, a.to);

  const aFrom = side(b.from, b.to, a.from);
  const aTo = side(b.from, b.to, a.to);
  const bFrom = side(a.from, a.to, b.from);
  const bTo = side(a.from, a.to, b.to);
  if (aFrom * aTo < 0 && bFrom * bTo < 0) return { how: 'crosses', at: crossingPoint(a, b) };
  for (const [sideOf, point, edge] of [
    [aFrom, a.from, b],
    [aTo, a.to, b],
    [bFrom, b.from, a],
    [bTo, b.to, a],
  ] as const) {
    if (sideOf === 0 && within(point, edge)) return { how: 'touches', at: point };
  }
  return null;
}

/** Two edges that share a corner meet elsewhere only if the second runs back along the first. */
function turnBack(from: Point, corner: Point, to: Point): Meeting | null {
  if (side(from, corner, to) !== 0) return null;
  const along = Math.sign(corner.x - from.x) * Math.sign(to.x - corner.x);
  const up = Math.sign(corner.y - from.y) * Math.sign(to.y - corner.y);
  return along < 0 || up < 0 ? { how: 'doubles-back', at: corner } : null;
}

/** 1 if `point` lies left of the line from a to b, −1 if right, 0 if on it. */
function side(a: Point, b: Point, point: Point): number {
  // Compared, not subtracted: either product is exact, their difference might not be.
  const one = (b.x - a.x) * (point.y - a.y);
  const other = (b.y - a.y) * (point.x - a.x);
  return one > other ? 1 : one < other ? -1 : 0;
}

function within(point: Point, edge: Edge): boolean {
  return edge.left <= point.x && point.x <= edge.right && edge.low <= point.y && point.y <= edge.high;
}

/** Only shown to people, so that rounding does no harm. */
function crossingPoint(a: Edge, b: Edge): { x: number; y: number } {
  const dx = a.to.x - a.from.x;
  const dy = a.to.y - a.from.y;
  const ex = b.to.x - b.from.x;
  const ey = b.to.y - b.from.y;
  const t = ((b.from.x - a.from.x) * ey - (b.from.y - a.from.y) * ex) / (dx * ey - dy * ex);
  return { x: Math.round(a.from.x + t * dx), y: Math.round(a.from.y + t * dy) };
}
