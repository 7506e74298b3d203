import type { Vertex } from './schema';
import { pointOf, type MmPoint } from './shape';

/*
 * Changes of a closed chain of vertices. An arc whose ends move keeps its bulge: the point it passes is moved,
 * turned and scaled with its chord, so that no arc goes flat or flips because a neighbour was dragged.
 */

export function moveVertexOf(vertices: readonly Vertex[], index: number, to: MmPoint): Vertex[] {
  return reshaped(
    vertices,
    vertices.map((from, i) => ({ from, to: i === index ? to : pointOf(from) })),
  );
}

/** A new corner before `index`; where an arc ends at `index`, the arc begins at the new corner. */
export function insertVertexIn(vertices: readonly Vertex[], index: number, at: MmPoint): Vertex[] {
  const steps: Step[] = vertices.map((from) => ({ from, to: pointOf(from) }));
  return reshaped(vertices, [...steps.slice(0, index), { from: null, to: at }, ...steps.slice(index)]);
}

/** A closed shape keeps at least three vertices. */
export function removeVertexFrom(vertices: readonly Vertex[], index: number): Vertex[] {
  if (vertices.length <= 3) return [...vertices];
  const steps: Step[] = vertices.map((from) => ({ from, to: pointOf(from) }));
  return reshaped(
    vertices,
    steps.filter((_, i) => i !== index),
  );
}

interface Step {
  /** The vertex it was; null for a new corner. */
  readonly from: Vertex | null;
  readonly to: MmPoint;
}

function reshaped(before: readonly Vertex[], steps: readonly Step[]): Vertex[] {
  return steps.map(({ from, to }, i): Vertex => {
    if (!from || Array.isArray(from)) return samePoint(from, to) ? from! : [to.x, to.y];
    const was = before.indexOf(from);
    const oldStart = pointOf(before[(was + before.length - 1) % before.length]!);
    const newStart = steps[(i + steps.length - 1) % steps.length]!.to;
    if (samePoint(from, to) && same(oldStart, newStart)) return from;
    const via = alongWithChord({ x: from.via[0], y: from.via[1] }, oldStart, pointOf(from), newStart, to);
    return { ...from, arcTo: [to.x, to.y], via: [via.x, via.y] };
  });
}

/** The similarity that takes the chord a → b to c → d, applied to a point: a product of complex numbers. */
function alongWithChord(point: MmPoint, a: MmPoint, b: MmPoint, c: MmPoint, d: MmPoint): MmPoint {
  const [px, py] = [point.x - a.x, point.y - a.y];
  const [ox, oy] = [b.x - a.x, b.y - a.y];
  const [nx, ny] = [d.x - c.x, d.y - c.y];
  const length2 = ox * ox + oy * oy || 1;
  const along = (px * ox + py * oy) / length2;
  const across = (py * ox - px * oy) / length2;
  return { x: tidy(c.x + along * nx - across * ny), y: tidy(c.y + along * ny + across * nx) };
}

function samePoint(vertex: Vertex | null, point: MmPoint): boolean {
  return vertex !== null && same(pointOf(vertex), point);
}

function same(a: MmPoint, b: MmPoint): boolean {
  return a.x === b.x && a.y === b.y;
}

/** To 0.01 mm, the step of the clipping kernel. */
function tidy(length: number): number {
  return Math.round(length * 100) / 100;
}
