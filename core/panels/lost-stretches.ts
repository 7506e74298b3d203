import type { Box, Polygon, Ring } from '../geometry/polygon';
import type { Hundredth } from '../units';

/** A part of a panel's edge that no square reaches, in the direction of the edge, which has the panel on its left. */
export interface LostStretch {
  readonly edge: PanelEdge;
  /** The edge's direction, of length 1. */
  readonly ux: number;
  readonly uy: number;
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
}

export interface PanelEdge {
  /** 0 is the outline, from 1 on the holes. */
  readonly ring: number;
  readonly ax: Hundredth;
  readonly ay: Hundredth;
  readonly bx: Hundredth;
  readonly by: Hundredth;
}

/**
 * Edges of one ring, one after the other, that keep to one quarter of the compass, as a quarter of a circle does;
 * or a level or upright edge by itself. What is true of the box round a run spares looking at its edges.
 */
export interface EdgeRun extends Box {
  readonly edges: readonly PanelEdge[];
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
export function lostStretches(runs: readonly EdgeRun[], side: Hundredth): LostStretch[] {
  const found: LostStretch[] = [];
  for (const run of runs) {
    const { ax, ay, bx, by } = run.edges[0]!;
    if (ax !== bx && ay !== by) lostAlongSlopes(run, runs, side, found);
    else lostAlongAxis(run.edges[0]!, runs, side, found);
  }
  return found;
}

export function runsOfPanel({ outer, holes }: Polygon): EdgeRun[] {
  const runs: EdgeRun[] = [];
  const add = (points: Ring, ring: number) => {
    let edges: PanelEdge[] = [];
    let quarter = 0;
    let a = points.at(-1)!;
    for (const b of points) {
      const isSloping = a.x !== b.x && a.y !== b.y;
      const heads = isSloping ? (b.x > a.x ? 1 : 2) + (b.y > a.y ? 2 : 4) : 0;
      if (edges.length > 0 && (heads === 0 || heads !== quarter)) {
        runs.push(runOf(edges));
        edges = [];
      }
      edges.push({ ring, ax: a.x, ay: a.y, bx: b.x, by: b.y });
      quarter = heads;
      a = b;
    }
    runs.push(runOf(edges));
  };
  add(outer, 0);
  for (let i = 0; i < holes.length; i++) add(holes[i]!, i + 1);
  return runs;
}

/** The ends of a run are corners of its box. */
function runOf(edges: readonly PanelEdge[]): EdgeRun {
  const { ax, ay } = edges[0]!;
  const { bx, by } = edges.at(-1)!;
  return {
    edges,
    left: Math.min(ax, bx),
    right: Math.max(ax, bx),
    bottom: Math.min(ay, by),
    top: Math.max(ay, by),
  };
}

function push(found: LostStretch[], edge: PanelEdge, ax: number, ay: number, bx: number, by: number): void {
  const dx = edge.bx - edge.ax;
  const dy = edge.by - edge.ay;
  const length = Math.sqrt(dx * dx + dy * dy);
  found.push({ edge, ux: dx / length, uy: dy / length, ax, ay, bx, by });
}

/**
 * The edges of a run never enter each other's squares, which lie across the run's quarter of the compass; and
 * other edges only do if the box round theirs comes near enough.
 */
function lostAlongSlopes(run: EdgeRun, runs: readonly EdgeRun[], side: number, found: LostStretch[]): void {
  const { ax, ay, bx, by } = run.edges[0]!;
  const [reachLeft, reachRight] = by < ay ? [0, side] : [side, 0];
  const [reachBottom, reachTop] = bx > ax ? [0, side] : [side, 0];
  const near: PanelEdge[] = [];
  for (const other of runs) {
    if (
      other === run ||
      other.right <= run.left - reachLeft ||
      other.left >= run.right + reachRight ||
      other.top <= run.bottom - reachBottom ||
      other.bottom >= run.top + reachTop
    ) {
      continue;
    }
    for (const edge of other.edges) near.push(edge);
  }
  if (near.length === 0) return;
  for (const edge of run.edges) lostAlongSlope(edge, near, side, found);
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
    if (fTop <= bottom || fBottom >= top + side) continue;

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
    push(found, edge, edge.ax + from * ex, edge.ay + from * ey, edge.ax + to * ex, edge.ay + to * ey);
  }
}

/** Places of squares with a side on the edge's line: those that others enter are taken off, the rest reach. */
function lostAlongAxis(edge: PanelEdge, runs: readonly EdgeRun[], side: number, found: LostStretch[]): void {
  const isLevel = edge.ay === edge.by;
  const [start, end] = isLevel ? [edge.ax, edge.bx] : [edge.ay, edge.by];
  const [first, last] = start < end ? [start, end] : [end, start];
  // The panel lies above a level edge that runs right, and right of an upright one that runs down.
  const inward = isLevel ? (end > start ? 1 : -1) : end < start ? 1 : -1;
  const at = inward * (isLevel ? edge.ay : edge.ax);

  const taken: Interval[] = [];
  for (const run of runs) {
    const box = isLevel
      ? [run.bottom, run.top, run.left, run.right]
      : [run.left, run.right, run.bottom, run.top];
    const low = inward > 0 ? box[0]! - at : -box[1]! - at;
    const high = inward > 0 ? box[1]! - at : -box[0]! - at;
    if (high <= 0 || low >= side || box[3]! <= first - side || box[2]! >= last + side) continue;
    // A run hangs together, and so does what it takes.
    const interval =
      low >= 0 && high <= side ? { from: box[2]!, to: box[3]! } : partInStrip(run, isLevel, inward, at, side);
    if (interval) taken.push({ from: interval.from - side, to: interval.to });
  }
  let lostFrom = first;
  let freeFrom = first - side;
  const lose = (to: number) => {
    if (to - lostFrom < leastStretch) return;
    const [a, b] = start < end ? [lostFrom, to] : [to, lostFrom];
    if (isLevel) push(found, edge, a, edge.ay, b, edge.ay);
    else push(found, edge, edge.ax, a, edge.ax, b);
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

/** How far along the edge reaches what a run has in the strip beside it that is `side` deep. */
function partInStrip(
  { edges }: EdgeRun,
  isLevel: boolean,
  inward: number,
  at: number,
  side: number,
): Interval | undefined {
  let from = Infinity;
  let to = -Infinity;
  for (const { ax, ay, bx, by } of edges) {
    const aDepth = inward * (isLevel ? ay : ax) - at;
    const bDepth = inward * (isLevel ? by : bx) - at;
    if ((aDepth <= 0 && bDepth <= 0) || (aDepth >= side && bDepth >= side)) continue;
    const aAlong = isLevel ? ax : ay;
    const slope = aDepth === bDepth ? 0 : ((isLevel ? bx : by) - aAlong) / (bDepth - aDepth);
    for (const [depth, along] of [
      [aDepth, aAlong],
      [bDepth, isLevel ? bx : by],
    ] as const) {
      const within = Math.min(side, Math.max(0, depth));
      const place = within === depth ? along : aAlong + slope * (within - aDepth);
      if (place < from) from = place;
      if (place > to) to = place;
    }
  }
  return from <= to ? { from, to } : undefined;
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
