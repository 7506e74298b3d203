import { arcThrough, pointAt, type CircularArc } from '../geometry/circular-arc';
import type { Mm } from '../units';
import type { Vertex } from './schema';
import { pointOf, type MmPoint } from './shape';

/*
 * Edges of a closed chain of vertices as circular arcs. An edge is named by the vertex that it ends at. The rise is
 * the height of the arc over its chord: above 0 where it bulges out of the shape, below 0 where it bulges in.
 *
 *        ___
 *      /  |  \        rise s, chord c:  r = s / 2 + c² / (8 s)
 *     /   | s \       (school geometry: the chord's half is the mean proportional of s and 2 r − s)
 *    ─────┴─────
 *         c
 */

/** Less than this is a straight edge, mm. */
const flat = 0.05;

/** The rise of the edge that ends at a vertex, mm; 0 for a straight one. */
export function riseOfEdge(vertices: readonly Vertex[], index: number): Mm {
  const arc = arcOfEdge(vertices, index);
  if (!arc) return 0;
  const height = (2 * arc.radius * Math.sin(arc.sweep / 4) ** 2) / 100;
  return tidy(height * Math.sign(arc.sweep) * turnOf(vertices));
}

/** Its radius, mm; null for a straight one. */
export function radiusOfEdge(vertices: readonly Vertex[], index: number): Mm | null {
  const arc = arcOfEdge(vertices, index);
  return arc && tidy(arc.radius / 100);
}

/** The rise with which an edge passes a point abreast of its middle. */
export function riseTowards(vertices: readonly Vertex[], index: number, to: MmPoint): Mm {
  const { middle, outX, outY } = chordOf(vertices, index);
  return tidy((to.x - middle.x) * outX + (to.y - middle.y) * outY);
}

/** The middle of the edge: of its arc, or of its chord. */
export function middleOfEdge(vertices: readonly Vertex[], index: number): MmPoint {
  const { middle, outX, outY } = chordOf(vertices, index);
  const rise = riseOfEdge(vertices, index);
  return { x: tidy(middle.x + outX * rise), y: tidy(middle.y + outY * rise) };
}

/** Points along an edge from end to end: its two ends, and if it is an arc so many parts between. */
export function pointsAlong(vertices: readonly Vertex[], index: number, parts: number): MmPoint[] {
  const from = pointOf(vertices[(index + vertices.length - 1) % vertices.length]!);
  const to = pointOf(vertices[index]!);
  const arc = arcOfEdge(vertices, index);
  if (!arc) return [from, to];
  return Array.from({ length: parts + 1 }, (_, i) => {
    const { x, y } = pointAt(arc, arc.from + (arc.sweep * i) / parts);
    return { x: x / 100, y: y / 100 };
  });
}

/** The length of the straight line between the edge's ends, mm. */
export function chordLength(vertices: readonly Vertex[], index: number): Mm {
  return chordOf(vertices, index).length;
}

/** The edge as an arc of this rise; straight again where there is next to none. */
export function bentEdge(vertices: readonly Vertex[], index: number, rise: Mm): Vertex[] {
  const { middle, outX, outY } = chordOf(vertices, index);
  const { x, y } = pointOf(vertices[index]!);
  const bent: Vertex =
    Math.abs(rise) < flat
      ? [x, y]
      : { arcTo: [x, y], via: [tidy(middle.x + outX * rise), tidy(middle.y + outY * rise)] };
  return vertices.map((vertex, i) => (i === index ? bent : vertex));
}

/**
 * The rise that gives an edge a radius: on the side to which it bulges already, more than half a circle where it is;
 * else outwards.
 *
 * @returns null where half the chord is longer than the radius
 */
export function riseForRadius(vertices: readonly Vertex[], index: number, radius: Mm): Mm | null {
  const half = chordOf(vertices, index).length / 2;
  // A radius read back from the file was rounded, and may be short of half the chord by that.
  if (radius < half - 0.01) return null;
  const now = riseOfEdge(vertices, index);
  const toCentre = Math.sqrt(Math.max(0, radius * radius - half * half));
  const rise = Math.abs(now) > half + 0.01 ? radius + toCentre : radius - toCentre;
  return tidy(now < 0 ? -rise : rise);
}

function arcOfEdge(vertices: readonly Vertex[], index: number): CircularArc | null {
  const vertex = vertices[index];
  if (!vertex || Array.isArray(vertex)) return null;
  const from = pointOf(vertices[(index + vertices.length - 1) % vertices.length]!);
  const [via, to] = [vertex.via, vertex.arcTo].map(([x, y]) => ({ x: x * 100, y: y * 100 }));
  return arcThrough({ x: from.x * 100, y: from.y * 100 }, via!, to!);
}

/** The straight line between an edge's ends: its middle, its length and the unit vector out of the shape. */
function chordOf(vertices: readonly Vertex[], index: number) {
  const from = pointOf(vertices[(index + vertices.length - 1) % vertices.length]!);
  const to = pointOf(vertices[index]!);
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.hypot(dx, dy) || 1;
  const turn = turnOf(vertices);
  return {
    middle: { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 },
    length,
    outX: (dy / length) * turn,
    outY: (-dx / length) * turn,
  };
}

/** 1 if the corners run anticlockwise, −1 if not. */
function turnOf(vertices: readonly Vertex[]): 1 | -1 {
  const points = vertices.map(pointOf);
  const double = points.reduce((sum, { x, y }, i) => {
    const next = points[(i + 1) % points.length]!;
    return sum + x * next.y - next.x * y;
  }, 0);
  return double < 0 ? -1 : 1;
}

function tidy(length: Mm): Mm {
  return Math.round(length * 100) / 100 + 0;
}
