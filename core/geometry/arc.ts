import { toHundredth, type Mm } from '../units';
import { chordCorners, cornerOnExtreme, cornersAlong, LEAST_RADIUS, tangentCorners } from './arc-chain';
import {
  arcThrough,
  pointAt,
  partAtExtremes,
  reverseArc,
  segmentArea,
  type CircularArc,
} from './circular-arc';
import type { Arc, Outline } from './outline';
import { boxOf, doubleSignedArea, type Box, type Point, type Ring } from './polygon';

/** A corner in mm, or the end of an arc from the corner before, past `via`. */
export type OutlineVertex =
  | readonly [x: Mm, y: Mm]
  | { readonly arcTo: readonly [x: Mm, y: Mm]; readonly via: readonly [x: Mm, y: Mm] };

/** `inscribed`: never outside the true shape; `circumscribed`: never short of it. */
export type Flattening = 'inscribed' | 'circumscribed';

/**
 * A closed shape drawn in mm with lines and arcs, as a polygon on whole hundredths.
 *
 * Promised: vertices are rounded to the nearest hundredth, and the true shape is the one drawn through the
 * rounded vertices. Every point of the polygon's edges is within 0.02 mm of it. An `inscribed` polygon lies
 * within the true shape, a `circumscribed` one contains it: hollow arcs are therefore flattened on the other
 * side of their circle than bulging ones. An arc's extremes in x and y keep their place where they are whole
 * hundredths. An arc of less than 0.1 mm radius becomes its chord; one whose `via` is on the line, or that
 * ends where it starts, is a straight edge.
 * Not promised: that an inscribed shape thinner than 0.04 mm does not cross itself (the horn of a crescent);
 * the clipping kernel drops such crossings.
 *
 * @param vertices either direction, the first not repeated; the first may end an arc that starts at the last
 * @returns anticlockwise from the first vertex, arcs in the order of the ring
 * @example flattenVertices([[0, 0], [10, 0], [10, 10]], 'inscribed').ring[1] // { x: 1000, y: 0 }
 */
export function flattenVertices(vertices: readonly OutlineVertex[], how: Flattening): Outline {
  const segments = anticlockwise(segmentsOf(vertices));
  const ring: Point[] = [];
  const arcs: Arc[] = [];
  for (const { from, to, arc } of segments) {
    const firstEdge = ring.length;
    ring.push(from);
    if (!arc) continue;
    const bulges = arc.sweep > 0;
    pushDistinct(ring, cornersAlong(arc, bulges === (how === 'inscribed') ? 'inside' : 'outside'), to);
    arcs.push({ firstEdge, edges: ring.length - firstEdge, centre: arc.centre, radius: arc.radius });
  }
  return { ring, arcs };
}

/**
 * A circle as a polygon, within 0.02 mm and on the promised side of the true circle, which is not rounded.
 * With a centre on whole hundredths the polygon has all the symmetries of a square.
 *
 * @param centre mm
 * @param diameter mm, > 0; below 0.2 mm the circle becomes a square about it, or inside it
 * @returns anticlockwise, one arc that goes all round
 */
export function flattenCircle(
  centre: { readonly x: Mm; readonly y: Mm },
  diameter: Mm,
  how: Flattening,
): Outline {
  const middle = { x: tidy(centre.x * 100), y: tidy(centre.y * 100) };
  const radius = tidy(diameter * 50);
  if (radius < LEAST_RADIUS) return squareFor(middle, radius, how);
  const onWhole = Number.isInteger(middle.x) && Number.isInteger(middle.y);
  const corners = onWhole ? symmetricCircle(middle, radius, how) : quartersOfCircle(middle, radius, how);
  const ring = corners.filter(({ x, y }, i) => x !== corners.at(i - 1)!.x || y !== corners.at(i - 1)!.y);
  return { ring, arcs: [{ firstEdge: 0, edges: ring.length, centre: middle, radius }] };
}

/**
 * The box of the true shape: arcs reach as far as their circle does, rounded to the nearest hundredth.
 *
 * @param outline as `flattenVertices` or `flattenCircle` gave it, whichever side it was flattened to
 */
export function boxOfOutline({ ring, arcs }: Outline): Box {
  const reached: Point[] = [...cornersOf(ring, arcs)];
  for (const arc of arcs) {
    const { centre, radius } = arc;
    if (arc.edges === ring.length) {
      reached.push(
        { x: centre.x - radius, y: centre.y - radius },
        { x: centre.x + radius, y: centre.y + radius },
      );
      continue;
    }
    for (const part of partAtExtremes(trueArc(ring, arc), 0).slice(1)) reached.push(pointAt(part, part.from));
  }
  const { left, bottom, right, top } = boxOf(reached);
  return { left: whole(left), bottom: whole(bottom), right: whole(right), top: whole(top) };
}

/** The points of a ring that were drawn: not those that only stand for an arc. */
export function cornersOf(ring: Ring, arcs: readonly Arc[]): Point[] {
  const standIn = new Set<number>();
  for (const { firstEdge, edges } of arcs) {
    if (edges === ring.length && arcs.length === 1) return [];
    for (let i = 1; i < edges; i++) standIn.add((firstEdge + i) % ring.length);
  }
  return ring.filter((_, i) => !standIn.has(i));
}

interface Segment {
  readonly from: Point;
  readonly to: Point;
  readonly arc: CircularArc | null;
}

/** From vertex 0 round to vertex 0; edges without length are left out. */
function segmentsOf(vertices: readonly OutlineVertex[]): Segment[] {
  const points = vertices.map((vertex) => {
    const [x, y] = 'arcTo' in vertex ? vertex.arcTo : vertex;
    return { x: toHundredth(x), y: toHundredth(y) };
  });
  const segments: Segment[] = [];
  for (let i = 1; i <= vertices.length; i++) {
    const from = points[i - 1]!;
    const to = points[i % points.length]!;
    if (from.x === to.x && from.y === to.y) continue;
    const vertex = vertices[i % vertices.length]!;
    const arc =
      'arcTo' in vertex ? arcThrough(from, { x: vertex.via[0] * 100, y: vertex.via[1] * 100 }, to) : null;
    segments.push({ from, to, arc: arc && arc.radius >= LEAST_RADIUS ? arc : null });
  }
  return segments;
}

function anticlockwise(segments: readonly Segment[]): readonly Segment[] {
  let area = doubleSignedArea(segments.map(({ from }) => from)) / 2;
  for (const { arc } of segments) if (arc) area += segmentArea(arc);
  if (area >= 0) return segments;
  return segments.map(({ from, to, arc }) => ({ from: to, to: from, arc: arc && reverseArc(arc) })).reverse();
}

/** Rounding may put corners of an arc of a few hundredths on each other. */
function pushDistinct(ring: Point[], corners: readonly Point[], end: Point): void {
  for (const corner of corners) {
    const last = ring.at(-1)!;
    const repeats =
      (corner.x === last.x && corner.y === last.y) || (corner.x === end.x && corner.y === end.y);
    if (!repeats) ring.push(corner);
  }
}

/** A quarter of a circle without its end: the extreme first where the polygon is inscribed. */
function quarterCorners(arc: CircularArc, how: Flattening): Point[] {
  return how === 'inscribed' ? [cornerOnExtreme(arc), ...chordCorners(arc, true)] : tangentCorners(arc, true);
}

function quartersOfCircle(centre: Point, radius: number, how: Flattening): Point[] {
  const sweep = Math.PI / 2;
  return [0, 1, 2, 3].flatMap((quarter) =>
    quarterCorners({ centre, radius, from: quarter * sweep, sweep }, how),
  );
}

/** The first eighth of a circle, mirrored into a quarter, turned into a whole and moved. */
function symmetricCircle(middle: Point, radius: number, how: Flattening): Point[] {
  const corners = quarterCorners({ centre: { x: 0, y: 0 }, radius, from: 0, sweep: Math.PI / 2 }, how);
  const extreme = how === 'inscribed' ? corners.splice(0, 1) : [];
  const eighth = corners.slice(0, corners.length / 2);
  const quarter = [...extreme, ...eighth, ...eighth.map(({ x, y }) => ({ x: y, y: x })).reverse()];
  return [
    ...quarter.map(({ x, y }) => ({ x: middle.x + x, y: middle.y + y })),
    ...quarter.map(({ x, y }) => ({ x: middle.x - y, y: middle.y + x })),
    ...quarter.map(({ x, y }) => ({ x: middle.x - x, y: middle.y - y })),
    ...quarter.map(({ x, y }) => ({ x: middle.x + y, y: middle.y - x })),
  ];
}

function squareFor(middle: Point, radius: number, how: Flattening): Outline {
  const half = how === 'circumscribed' ? radius : radius * Math.SQRT1_2;
  const down = how === 'circumscribed' ? Math.floor : Math.ceil;
  const up = how === 'circumscribed' ? Math.ceil : Math.floor;
  const [left, bottom] = [down(middle.x - half), down(middle.y - half)];
  const right = Math.max(up(middle.x + half), left + 1);
  const top = Math.max(up(middle.y + half), bottom + 1);
  const ring = [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
  return { ring, arcs: [{ firstEdge: 0, edges: 4, centre: middle, radius }] };
}

/** The arc a run of edges stands for, from the run's ends; its turn is that of the run. */
function trueArc(ring: Ring, { firstEdge, edges, centre, radius }: Arc): CircularArc {
  const a = ring[firstEdge]!;
  const b = ring[(firstEdge + edges) % ring.length]!;
  const from = Math.atan2(a.y - centre.y, a.x - centre.x);
  const turn = (Math.atan2(b.y - centre.y, b.x - centre.x) - from + 4 * Math.PI) % (2 * Math.PI);
  const next = ring[(firstEdge + 1) % ring.length]!;
  const turnsLeft = (a.x - centre.x) * (next.y - a.y) - (a.y - centre.y) * (next.x - a.x) > 0;
  return { centre, radius, from, sweep: turnsLeft ? turn : turn - 2 * Math.PI };
}

/** A length in hundredths without the noise of a decimal fraction; parts of a hundredth are kept. */
function tidy(length: number): number {
  const nearest = Math.round(length);
  return Math.abs(length - nearest) < 1e-7 ? nearest : length;
}

function whole(length: number): number {
  return Math.round(length) + 0;
}
