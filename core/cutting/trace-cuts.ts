import type { Point, Polygon } from '../geometry/polygon';
import type { Cut } from './plan';
import type { Rect } from './slabs';

/*
 * Free cuts: along every edge of the panels and of the offcuts that are kept. Edges in one line become one
 * cut; the two banks of one kerf are one cut; an edge on the stock sheet's own edge needs none.
 */

type Interval = readonly [from: number, to: number];
/** Stretches on lines, by the line's coordinate. */
type Lines = Map<number, Interval[]>;

/** Long cuts first, so that the stock sheet soon comes apart into pieces that are easy to hold. */
export function traceCuts(
  shapes: readonly Polygon[],
  keptOffcuts: readonly Rect[],
  width: number,
  height: number,
  kerf: number,
): Cut[] {
  const rights: Lines = new Map();
  const lefts: Lines = new Map();
  const tops: Lines = new Map();
  const bottoms: Lines = new Map();
  const sloping = new Map<string, Cut>();
  const edge = (a: Point, b: Point) => {
    if (a.x === b.x) add(b.y > a.y ? rights : lefts, a.x, a.y, b.y);
    else if (a.y === b.y) add(b.x > a.x ? bottoms : tops, a.y, a.x, b.x);
    else {
      const key = `${a.x},${a.y},${b.x},${b.y}`;
      if (!sloping.has(`${b.x},${b.y},${a.x},${a.y}`)) sloping.set(key, { from: a, to: b });
    }
  };
  for (const shape of shapes) {
    for (const ring of [shape.outer, ...shape.holes]) {
      ring.forEach((point, i) => edge(point, ring[(i + 1) % ring.length]!));
    }
  }
  for (const [left, bottom, right, top] of keptOffcuts) {
    add(rights, right, bottom, top);
    add(lefts, left, bottom, top);
    add(tops, top, left, right);
    add(bottoms, bottom, left, right);
  }
  const cuts: Cut[] = [
    ...onLines(rights, lefts, width, kerf).map(([x, y0, y1]) => ({ from: { x, y: y0 }, to: { x, y: y1 } })),
    ...onLines(tops, bottoms, height, kerf).map(([y, x0, x1]) => ({ from: { x: x0, y }, to: { x: x1, y } })),
    ...sloping.values(),
  ];
  return cuts.sort(
    (a, b) =>
      cutLength(b) - cutLength(a) ||
      a.from.y - b.from.y ||
      a.from.x - b.from.x ||
      a.to.y - b.to.y ||
      a.to.x - b.to.x,
  );
}

export function cutLength({ from, to }: Cut): number {
  return Math.hypot(to.x - from.x, to.y - from.y);
}

function add(lines: Lines, at: number, a: number, b: number): void {
  const stretches = lines.get(at);
  const interval: Interval = a < b ? [a, b] : [b, a];
  if (stretches) stretches.push(interval);
  else lines.set(at, [interval]);
}

/** Cuts on parallel lines. `far` edges have the kerf beyond them, `near` edges before them. */
function onLines(far: Lines, near: Lines, end: number, kerf: number): [number, number, number][] {
  const cuts: [number, number, number][] = [];
  const lines = new Map<number, readonly Interval[]>();
  for (const [at, stretches] of far) lines.set(at, joinedWithin(stretches, kerf));
  for (const [at, stretches] of near) {
    const rest = less(joinedWithin(stretches, kerf), lines.get(at - kerf) ?? []);
    if (kerf === 0 && far.has(at)) lines.set(at, joinedWithin([...(lines.get(at) ?? []), ...rest], 0));
    else lines.set(at, [...(lines.get(at) ?? []), ...rest]);
  }
  for (const [at, stretches] of lines) {
    if (at <= 0 || at >= end) continue;
    for (const [from, to] of stretches) cuts.push([at, from, to]);
  }
  return cuts;
}

/** Intervals in order, those that overlap, touch or lie within `gap` of each other made one. */
export function joinedWithin(intervals: readonly Interval[], gap: number): Interval[] {
  const joined: [number, number][] = [];
  for (const [from, to] of [...intervals].sort((a, b) => a[0] - b[0])) {
    const last = joined[joined.length - 1];
    if (last && from <= last[1] + gap) last[1] = Math.max(last[1], to);
    else joined.push([from, to]);
  }
  return joined;
}

/** What is left of the intervals outside the others. */
export function less(intervals: readonly Interval[], others: readonly Interval[]): Interval[] {
  let rest = [...intervals];
  for (const [from, to] of others) {
    rest = rest.flatMap((interval): Interval[] => {
      const [a, b] = interval;
      if (to <= a || from >= b) return [interval];
      const parts: Interval[] = [];
      if (a < from) parts.push([a, from]);
      if (to < b) parts.push([to, b]);
      return parts;
    });
  }
  return rest;
}
