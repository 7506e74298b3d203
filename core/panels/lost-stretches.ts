import type { Polygon, Ring } from '../geometry/polygon';
import type { Hundredth } from '../units';

/** A part of a panel's edge that no square reaches, in the direction of the edge, which has the panel on its left. */
export interface LostStretch {
  readonly edge: PanelEdge;
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
}

/** An edge of a panel with its direction of length 1. */
export interface PanelEdge {
  /** 0 is the outline, from 1 on the holes. */
  readonly ring: number;
  readonly ax: Hundredth;
  readonly ay: Hundredth;
  readonly bx: Hundredth;
  readonly by: Hundredth;
  readonly ux: number;
  readonly uy: number;
}

/** Shorter stretches are as good as none, and shorter gaps no gaps; hundredths. */
const leastStretch = 5;
const leastGap = 1;

/**
 * Where along a panel's edges no square of side `side` can lie in the panel and against the edge, in plain
 * numbers. Of the parts that the panel loses when it is opened by the square, these are the edges they touch.
 *
 *          ╲   ┌───┐      A square reaches a point of a sloping edge with one of its corners only: the point
 *           ╲  │   │      is lost if another edge enters that square. It reaches a level or upright edge with
 *            ╲ │   │      a whole side: a point is lost if no place along the edge is free for a square that
 *          ───╲└───┘      covers it.
 */
export function lostStretches(edges: readonly PanelEdge[], side: Hundredth): LostStretch[] {
  const found: LostStretch[] = [];
  for (const edge of edges) {
    const { ax, ay, bx, by } = edge;
    if (ax !== bx && ay !== by) lostAlongSlope(edge, edges, side, found);
    else lostAlongAxis(edge, edges, side, found);
  }
  return found;
}

export function panelEdges({ outer, holes }: Polygon): PanelEdge[] {
  const edges: PanelEdge[] = [];
  const add = (points: Ring, ring: number) => {
    for (let i = 0; i < points.length; i++) {
      const a = points[i]!;
      const b = points[i + 1 === points.length ? 0 : i + 1]!;
      const dx = b.x - a.x;
      const dy = b.y - a.y;
      const length = Math.sqrt(dx * dx + dy * dy);
      edges.push({ ring, ax: a.x, ay: a.y, bx: b.x, by: b.y, ux: dx / length, uy: dy / length });
    }
  };
  add(outer, 0);
  holes.forEach((hole, i) => add(hole, i + 1));
  return edges;
}

/**
 * An edge f enters the square from p to p + (side, side) where p lies in f swept by the square turned about:
 * between f's extremes less the square each way, and between two lines along f. (Coordinates are mirrored so
 * that the square lies to the upper right.)
 */
function lostAlongSlope(
  edge: PanelEdge,
  edges: readonly PanelEdge[],
  side: number,
  found: LostStretch[],
): void {
  const mirrorX = edge.by < edge.ay ? 1 : -1;
  const mirrorY = edge.bx > edge.ax ? 1 : -1;
  const ax = mirrorX * edge.ax;
  const ay = mirrorY * edge.ay;
  const dx = mirrorX * edge.bx - ax;
  const dy = mirrorY * edge.by - ay;
  const [left, right] = dx > 0 ? [ax, ax + dx] : [ax + dx, ax];
  const [bottom, top] = dy > 0 ? [ay, ay + dy] : [ay + dy, ay];
  const length = Math.abs(dx) + Math.abs(dy);

  const blocked: Interval[] = [];
  for (const other of edges) {
    const fax = mirrorX * other.ax;
    const fbx = mirrorX * other.bx;
    const [fLeft, fRight] = fax < fbx ? [fax, fbx] : [fbx, fax];
    if (fRight <= left || fLeft >= right + side) continue;
    const fay = mirrorY * other.ay;
    const fby = mirrorY * other.by;
    const [fBottom, fTop] = fay < fby ? [fay, fby] : [fby, fay];
    if (fTop <= bottom || fBottom >= top + side || other === edge) continue;

    let from = 0;
    let to = 1;
    const keepBetween = (low: number, high: number, at: number, slope: number) => {
      if (slope > 0) {
        from = Math.max(from, (low - at) / slope);
        to = Math.min(to, (high - at) / slope);
      } else if (slope < 0) {
        from = Math.max(from, (high - at) / slope);
        to = Math.min(to, (low - at) / slope);
      } else if (at <= low || at >= high) {
        to = -1;
      }
    };
    keepBetween(fLeft - side, fRight, ax, dx);
    keepBetween(fBottom - side, fTop, ay, dy);
    if (to > from && fax !== fbx && fay !== fby) {
      const nx = fay - fby;
      const ny = fbx - fax;
      const along = nx * fax + ny * fay;
      const low = along - side * (Math.max(0, nx) + Math.max(0, ny));
      const high = along - side * (Math.min(0, nx) + Math.min(0, ny));
      keepBetween(low, high, nx * ax + ny * ay, nx * dx + ny * dy);
    }
    if (to > from) blocked.push({ from, to });
  }
  const [ex, ey] = [edge.bx - edge.ax, edge.by - edge.ay];
  for (const { from, to } of joined(blocked, leastGap / length)) {
    if ((to - from) * length < leastStretch) continue;
    found.push({
      edge,
      ax: edge.ax + from * ex,
      ay: edge.ay + from * ey,
      bx: edge.ax + to * ex,
      by: edge.ay + to * ey,
    });
  }
}

/** Places of squares with a side on the edge's line: those that others enter are taken off, the rest reach. */
function lostAlongAxis(
  edge: PanelEdge,
  edges: readonly PanelEdge[],
  side: number,
  found: LostStretch[],
): void {
  const isLevel = edge.ay === edge.by;
  const [start, end] = isLevel ? [edge.ax, edge.bx] : [edge.ay, edge.by];
  const [first, last] = start < end ? [start, end] : [end, start];
  // The panel lies above a level edge that runs right, and right of an upright one that runs down.
  const inward = isLevel ? (end > start ? 1 : -1) : end < start ? 1 : -1;
  const at = inward * (isLevel ? edge.ay : edge.ax);

  const taken: Interval[] = [];
  for (const other of edges) {
    const [aAlong, bAlong] = isLevel ? [other.ax, other.bx] : [other.ay, other.by];
    const aDepth = inward * (isLevel ? other.ay : other.ax) - at;
    const bDepth = inward * (isLevel ? other.by : other.bx) - at;
    if ((aDepth <= 0 && bDepth <= 0) || (aDepth >= side && bDepth >= side)) continue;
    const alongAt = (depth: number) =>
      aDepth === bDepth ? aAlong : aAlong + ((bAlong - aAlong) * (depth - aDepth)) / (bDepth - aDepth);
    const one = aDepth < 0 ? alongAt(0) : aDepth > side ? alongAt(side) : aAlong;
    const two = bDepth < 0 ? alongAt(0) : bDepth > side ? alongAt(side) : bAlong;
    const [from, to] = one < two ? [one - side, two] : [two - side, one];
    if (to > first - side && from < last) taken.push({ from, to });
  }
  let lostFrom = first;
  let freeFrom = first - side;
  const lose = (to: number) => {
    if (to - lostFrom < leastStretch) return;
    const [a, b] = start < end ? [lostFrom, to] : [to, lostFrom];
    if (isLevel) found.push({ edge, ax: a, ay: edge.ay, bx: b, by: edge.ay });
    else found.push({ edge, ax: edge.ax, ay: a, bx: edge.ax, by: b });
  };
  for (const { from, to } of joined(taken, 0)) {
    if (from >= freeFrom) {
      lose(Math.min(last, freeFrom));
      lostFrom = Math.max(lostFrom, from + side);
    }
    freeFrom = Math.max(freeFrom, to);
    if (lostFrom >= last) return;
  }
  lose(Math.min(last, freeFrom));
}

interface Interval {
  readonly from: number;
  readonly to: number;
}

/** Intervals in order, those joined between which there is no gap worth the name. */
function joined(intervals: Interval[], gap: number): Interval[] {
  if (intervals.length < 2) return intervals;
  intervals.sort((a, b) => a.from - b.from);
  const found: Interval[] = [];
  let { from, to } = intervals[0]!;
  for (const next of intervals) {
    if (next.from > to + gap) {
      found.push({ from, to });
      ({ from, to } = next);
    } else if (next.to > to) {
      to = next.to;
    }
  }
  found.push({ from, to });
  return found;
}
