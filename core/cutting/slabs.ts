import type { Polygon } from '../geometry/polygon';

/*
 * A panel seen as rectangles. Horizontal lines through every corner divide it into slabs; in each slab it is a
 * row of trapezoids. Their outer rectangles cover the panel, their inner ones lie inside it. For a rectilinear
 * panel both are exact.
 */

/** Left, bottom, right, top; whole hundredths. */
export type Rect = readonly [left: number, bottom: number, right: number, top: number];

interface Slab {
  readonly bottom: number;
  readonly top: number;
  /** Per trapezoid from left to right: outer left, inner left, inner right, outer right. */
  readonly spans: readonly (readonly [number, number, number, number])[];
}

/** A slab with a sloping side is divided into this many, so that the steps follow the slope. */
const STEPS = 8;
/** Outlines with more corners (arcs) are read more coarsely: covers are valid at any fineness. */
const MOST_SLABS = 48;

/** Rectangles, overlapping nowhere, that together cover the polygon; the polygon itself when rectilinear. */
export function coverOf(polygon: Polygon): Rect[] {
  const cover: Rect[] = [];
  let open: Rect[] = [];
  for (const { bottom, top, spans } of thinned(slabsOf(polygon))) {
    const row: Rect[] = spans.map(([left, , , right]) => {
      const below = open.find((rect) => rect[0] === left && rect[2] === right && rect[3] === bottom);
      return [left, below ? below[1] : bottom, right, top];
    });
    for (const rect of open) {
      if (!row.some(([left, low, right]) => left === rect[0] && right === rect[2] && low === rect[1]))
        cover.push(rect);
    }
    open = row;
  }
  return [...cover, ...open];
}

/** The largest rectangle found inside the polygon (exact when rectilinear); null if none has an area. */
export function inscribedRectangle(polygon: Polygon): Rect | null {
  const slabs = slabsOf(polygon);
  let best: Rect | null = null;
  let bestArea = 0;
  const grow = (from: number, next: number, left: number, right: number) => {
    const bottom = slabs[from]!.bottom;
    const top = slabs[next - 1]!.top;
    const area = (right - left) * (top - bottom);
    if (area > bestArea) {
      bestArea = area;
      best = [left, bottom, right, top];
    }
    const above = slabs[next];
    if (!above) return;
    // Even at full height this width could not win.
    if ((right - left) * (slabs[slabs.length - 1]!.top - bottom) <= bestArea) return;
    for (const [, innerLeft, innerRight] of above.spans) {
      const l = Math.max(left, innerLeft);
      const r = Math.min(right, innerRight);
      if (l < r) grow(from, next + 1, l, r);
    }
  };
  for (let i = 0; i < slabs.length; i++) {
    for (const [, left, right] of slabs[i]!.spans) if (left < right) grow(i, i + 1, left, right);
  }
  return best;
}

function slabsOf(polygon: Polygon): Slab[] {
  const edges: { x0: number; y0: number; x1: number; y1: number }[] = [];
  const levels = new Set<number>();
  for (const ring of [polygon.outer, ...polygon.holes]) {
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      levels.add(a.y);
      if (a.y < b.y) edges.push({ x0: a.x, y0: a.y, x1: b.x, y1: b.y });
      if (a.y > b.y) edges.push({ x0: b.x, y0: b.y, x1: a.x, y1: a.y });
    });
  }
  const ys = [...levels].sort((a, b) => a - b);
  const slabs: Slab[] = [];
  for (let i = 0; i + 1 < ys.length; i++) {
    const [y0, y1] = [ys[i]!, ys[i + 1]!];
    const crossing = edges.filter((edge) => edge.y0 <= y0 && edge.y1 >= y1);
    const sloping = crossing.some((edge) => edge.x0 !== edge.x1);
    const steps = sloping && ys.length < MOST_SLABS ? Math.min(STEPS, y1 - y0) : 1;
    for (let s = 0; s < steps; s++) {
      const bottom = y0 + Math.floor(((y1 - y0) * s) / steps);
      const top = y0 + Math.floor(((y1 - y0) * (s + 1)) / steps);
      slabs.push({ bottom, top, spans: spansBetween(crossing, bottom, top) });
    }
  }
  return slabs;
}

function spansBetween(
  crossing: readonly { x0: number; y0: number; x1: number; y1: number }[],
  bottom: number,
  top: number,
): Slab['spans'] {
  const at = (edge: (typeof crossing)[number], y: number) =>
    edge.x0 + ((edge.x1 - edge.x0) * (y - edge.y0)) / (edge.y1 - edge.y0);
  const sides = crossing
    .map((edge) => [at(edge, bottom), at(edge, top)] as const)
    .sort((a, b) => a[0] + a[1] - b[0] - b[1]);
  const spans: [number, number, number, number][] = [];
  for (let i = 0; i + 1 < sides.length; i += 2) {
    const [left, right] = [sides[i]!, sides[i + 1]!];
    spans.push([
      Math.floor(Math.min(...left)),
      Math.ceil(Math.max(...left)),
      Math.floor(Math.min(...right)),
      Math.ceil(Math.max(...right)),
    ]);
  }
  return spans;
}

/** Neighbouring slabs thrown together until few enough are left; each then covers what its slabs covered. */
function thinned(slabs: readonly Slab[]): readonly Slab[] {
  const most = 16;
  const groups = Math.ceil(slabs.length / most);
  if (slabs.length <= MOST_SLABS && slabs.every(({ spans }) => spans.every(isUpright)))
    return slabs.map(joined);
  const thin: Slab[] = [];
  for (let i = 0; i < slabs.length; i += groups) {
    const run = slabs.slice(i, i + groups);
    thin.push(
      joined({
        bottom: run[0]!.bottom,
        top: run[run.length - 1]!.top,
        spans: run.flatMap((slab) => slab.spans),
      }),
    );
  }
  return thin;
}

function isUpright([outerLeft, innerLeft, innerRight, outerRight]: readonly [
  number,
  number,
  number,
  number,
]) {
  return outerLeft === innerLeft && innerRight === outerRight;
}

/** Overlapping or touching spans of a slab made one. */
function joined({ bottom, top, spans }: Slab): Slab {
  const sorted = [...spans].sort((a, b) => a[0] - b[0]);
  const merged: [number, number, number, number][] = [];
  for (const [left, , , right] of sorted) {
    const last = merged[merged.length - 1];
    if (last && left <= last[3]) {
      last[2] = last[3] = Math.max(last[3], right);
    } else merged.push([left, left, right, right]);
  }
  return { bottom, top, spans: merged };
}
