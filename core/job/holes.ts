import type { Mm } from '../units';
import { changeWall } from './changes';
import type { Job, Vertex, Zone } from './schema';
import { boxOfVertices, isRectangle, pointOf, type MmBox, type MmPoint } from './shape';

/** A hole of a zone, counted from 0. */
export interface HoleRef {
  readonly zone: string;
  readonly hole: number;
}

export interface MmCircle extends MmPoint {
  readonly diameter: Mm;
}

/** A circle as four arcs from its rightmost point, anticlockwise. */
export function circleVertices({ x, y, diameter }: MmCircle): Vertex[] {
  const r = diameter / 2;
  const slant = r * Math.SQRT1_2;
  const arc = (toX: number, toY: number, viaX: number, viaY: number): Vertex => ({
    arcTo: [tidy(x + toX * r), tidy(y + toY * r)],
    via: [tidy(x + viaX * slant), tidy(y + viaY * slant)],
  });
  return [arc(1, 0, 1, -1), arc(0, 1, 1, 1), arc(-1, 0, -1, 1), arc(0, -1, -1, -1)];
}

/** The circle that four such arcs draw; null for any other shape. */
export function circleOf(vertices: readonly Vertex[]): MmCircle | null {
  if (vertices.length !== 4 || vertices.some(Array.isArray)) return null;
  const box = boxOfVertices(vertices.map((vertex): Vertex => [pointOf(vertex).x, pointOf(vertex).y]));
  if (Math.abs(box.width - box.height) > 0.02) return null;
  const circle = {
    x: tidy(box.x + box.width / 2),
    y: tidy(box.y + box.height / 2),
    diameter: tidy(box.width),
  };
  const points = vertices.flatMap((vertex) =>
    Array.isArray(vertex) ? [vertex] : [vertex.arcTo, vertex.via],
  );
  const off = points.map(([x, y]) => Math.abs(Math.hypot(x - circle.x, y - circle.y) - circle.diameter / 2));
  return Math.max(...off) < 0.03 ? circle : null;
}

/** What a hole is to whoever types its sizes. */
export function kindOfHole(hole: readonly Vertex[]): 'rectangle' | 'circle' | 'free' {
  return isRectangle(hole) ? 'rectangle' : circleOf(hole) ? 'circle' : 'free';
}

export function addHole(job: Job, wallId: string, zoneId: string, hole: readonly Vertex[]): Job {
  return changeHoles(job, wallId, zoneId, (holes) => [...holes, [...hole]]);
}

export function removeHole(job: Job, wallId: string, { zone, hole }: HoleRef): Job {
  return changeHoles(job, wallId, zone, (holes) => holes.filter((_, i) => i !== hole));
}

export function setHole(job: Job, wallId: string, { zone, hole }: HoleRef, vertices: readonly Vertex[]): Job {
  return changeHoles(job, wallId, zone, (holes) => holes.map((one, i) => (i === hole ? [...vertices] : one)));
}

export function movedHole(hole: readonly Vertex[], dx: Mm, dy: Mm): Vertex[] {
  return mapVertices(hole, (x, y) => [tidy(x + dx), tidy(y + dy)]);
}

/** The hole scaled into a box; a circle takes the smaller side as its diameter, about the box's middle. */
export function fittedHole(hole: readonly Vertex[], to: MmBox): Vertex[] {
  const { x, y, width, height } = to;
  if (circleOf(hole)) {
    const diameter = Math.min(width, height);
    return circleVertices({ x: tidy(x + width / 2), y: tidy(y + height / 2), diameter });
  }
  const from = boxOfVertices(hole);
  return mapVertices(hole, (px, py) => [
    tidy(x + ((px - from.x) * width) / (from.width || 1)),
    tidy(y + ((py - from.y) * height) / (from.height || 1)),
  ]);
}

function changeHoles(
  job: Job,
  wallId: string,
  zoneId: string,
  change: (holes: readonly Vertex[][]) => Vertex[][],
): Job {
  return changeWall(job, wallId, (wall) => {
    if (!wall.zones.some(({ id }) => id === zoneId)) return wall;
    const zones = wall.zones.map((zone): Zone =>
      zone.id === zoneId ? { ...zone, holes: change(zone.holes) } : zone,
    );
    return { ...wall, zones };
  });
}

function mapVertices(vertices: readonly Vertex[], map: (x: Mm, y: Mm) => [Mm, Mm]): Vertex[] {
  return vertices.map((vertex) =>
    Array.isArray(vertex)
      ? map(vertex[0], vertex[1])
      : { ...vertex, arcTo: map(...vertex.arcTo), via: map(...vertex.via) },
  );
}

function tidy(length: Mm): Mm {
  return Math.round(length * 100) / 100 + 0;
}
