import type { Finding } from '../finding';
import { flattenVertices } from '../geometry/arc';
import { boxOf, doubleSignedArea, type Point } from '../geometry/polygon';
import { toHundredth, toMm } from '../units';
import { firstMeeting } from './crossing';
import { longestWall, mostEdges, mostEdgesOfShape } from './limits';
import { refusal, type Path } from './place';
import type { Fitting, Job, Opening, SurveyLine, Vertex, Zone } from './schema';
import { pointOf } from './shape';
import { zoneListsOf } from './zone-lists';

/** Every outline, shape and hole encloses one area without meeting itself; every opening is one kind of shape. */
export function checkShapes(job: Job): Finding[] {
  const budget = { edges: mostEdges };
  const ofWalls = job.walls.flatMap((wall, w) => [
    ...checkVertices(job, ['walls', w, 'outline'], wall.outline, budget),
    ...(['openings', 'fittings'] as const).flatMap((list) =>
      wall[list].flatMap((object, i) => checkPlaced(job, ['walls', w, list, i], object, budget)),
    ),
    ...(wall.lines ?? []).flatMap((line, i) => checkLine(job, ['walls', w, 'lines', i], line)),
    ...checkZones(job, ['walls', w, 'zones'], wall.zones, budget),
  ]);
  const ofOthers = zoneListsOf(job).filter(({ alternative }) => alternative !== null);
  return [...ofWalls, ...ofOthers.flatMap(({ zones, path }) => checkZones(job, path, zones, budget))];
}

function checkZones(job: Job, path: Path, zones: readonly Zone[], budget: { edges: number }): Finding[] {
  return zones.flatMap((zone, z) => [
    ...checkVertices(job, [...path, z, 'shape'], zone.shape, budget),
    ...zone.holes.flatMap((hole, h) => checkVertices(job, [...path, z, 'holes', h], hole, budget)),
  ]);
}

function checkLine(job: Job, path: Path, { from, to }: SurveyLine): Finding[] {
  if (!same(gridPoint(from), gridPoint(to))) return [];
  const says = `is the point where the line begins (${inWords(gridPoint(from))}); give the line two different ends.`;
  return [refusal(job, [...path, 'to'], 'line-without-length', says)];
}

function checkPlaced(job: Job, path: Path, object: Opening | Fitting, budget: { edges: number }): Finding[] {
  const sides = (['x', 'y', 'width', 'height'] as const).filter((key) => object[key] !== undefined);
  const given = [
    ...(sides.length > 0 ? ['a rectangle'] : []),
    ...(object.circle ? ['a circle'] : []),
    ...(object.shape ? ['a shape'] : []),
  ];
  if (given.length === 0) {
    const says = 'has no place; give x, y, width and height, or a circle, or a shape.';
    return [refusal(job, path, 'no-shape', says)];
  }
  if (given.length > 1) {
    return [refusal(job, path, 'several-shapes', `has ${given.join(' and ')}; keep one of them.`)];
  }
  if (object.shape) return checkVertices(job, [...path, 'shape'], object.shape, budget);
  if (object.circle || sides.length === 4) return [];
  const missing = (['x', 'y', 'width', 'height'] as const).find((key) => object[key] === undefined)!;
  return [refusal(job, [...path, missing], 'missing-field', 'is missing; give a number of mm.')];
}

function checkVertices(
  job: Job,
  path: Path,
  vertices: readonly Vertex[],
  budget: { edges: number },
): Finding[] {
  const faults = [...repeatedPoints(job, path, vertices), ...flatArcs(job, path, vertices)];
  if (faults.length > 0) return faults;
  if (edgesAtMost(vertices) > mostEdgesOfShape) {
    const says = `has more than ${mostEdgesOfShape} edges when its arcs are drawn out; simplify it.`;
    return [refusal(job, path, 'too-many', says)];
  }
  const { ring } = flattenVertices(vertices, 'inscribed');
  budget.edges -= ring.length;
  if (budget.edges < 0) {
    const over = budget.edges + ring.length >= 0;
    const says = `brings the job over ${mostEdges} edges, which is the limit; split the job.`;
    return over ? [refusal(job, path, 'too-many', says)] : [];
  }
  return [...tooLong(job, path, ring), ...notSimple(job, path, ring)];
}

function repeatedPoints(job: Job, path: Path, vertices: readonly Vertex[]): Finding[] {
  return vertices.flatMap((vertex, i) => {
    const before = (i + vertices.length - 1) % vertices.length;
    if (!same(gridPoint(vertex), gridPoint(vertices[before]!))) return [];
    const where = inWords(gridPoint(vertex));
    // The closing point is the last one of the list, so that it is the one to take out.
    const [at, says] =
      i === 0
        ? [before, `repeats the first point (${where}); take it out, the outline closes by itself.`]
        : [i, `repeats the point before it (${where}); take one of them out.`];
    return [refusal(job, [...path, at], 'repeated-point', says)];
  });
}

/** An arc needs three points that are not in line; its middle point tells on which side it bulges. */
function flatArcs(job: Job, path: Path, vertices: readonly Vertex[]): Finding[] {
  return vertices.flatMap((vertex, i) => {
    if (Array.isArray(vertex)) return [];
    const from = gridPoint(vertices[(i + vertices.length - 1) % vertices.length]!);
    const to = gridPoint(vertex);
    const via = { x: toHundredth(vertex.via[0]), y: toHundredth(vertex.via[1]) };
    if ((to.x - from.x) * (via.y - from.y) !== (to.y - from.y) * (via.x - from.x)) return [];
    const says = `lies in line with the ends of its arc (${inWords(from)} and ${inWords(to)}); move it to the side the arc bulges to, or draw a straight edge.`;
    return [refusal(job, [...path, i, 'via'], 'flat-arc', says)];
  });
}

function tooLong(job: Job, path: Path, ring: readonly Point[]): Finding[] {
  const box = boxOf(ring);
  const width = toMm(box.right - box.left);
  const height = toMm(box.top - box.bottom);
  if (Math.max(width, height) <= longestWall) return [];
  const says = `is ${width} × ${height} mm; a wall is at most ${longestWall} mm long or high, so check the figures or split it.`;
  return [refusal(job, path, 'too-long', says)];
}

function notSimple(job: Job, path: Path, ring: readonly Point[]): Finding[] {
  const meeting = firstMeeting(ring);
  if (meeting) {
    const where = inWords(meeting.at);
    const says = {
      crosses: `crosses itself at ${where}; move a corner so that no two edges cross.`,
      touches: `touches itself at ${where}; move a corner so that no two edges meet there.`,
      'doubles-back': `doubles back on itself at ${where}; take that point out or move it aside.`,
    }[meeting.how];
    return [refusal(job, path, 'crosses-itself', says)];
  }
  if (doubleSignedArea(ring) !== 0) return [];
  return [refusal(job, path, 'no-area', 'encloses no area; move a point out of the line of the others.')];
}

/** Edges after flattening, from above: a chord's sagitta within 0.02 mm of radius r spans about √(0.16 r). */
function edgesAtMost(vertices: readonly Vertex[]): number {
  return vertices.reduce((sum, vertex, i) => {
    if (Array.isArray(vertex)) return sum + 1;
    const from = pointOf(vertices[(i + vertices.length - 1) % vertices.length]!);
    const [x, y] = vertex.arcTo;
    const [vx, vy] = vertex.via;
    const a = Math.hypot(vx - from.x, vy - from.y);
    const b = Math.hypot(x - vx, y - vy);
    const c = Math.hypot(x - from.x, y - from.y);
    const double = Math.abs((vx - from.x) * (y - from.y) - (vy - from.y) * (x - from.x));
    // An arc of more than half a circle has its three points, and so its diameter, within the coordinates.
    const radius = Math.min((a * b * c) / (2 * double), 2 * longestWall);
    return sum + Math.ceil((2 * Math.PI * radius) / Math.sqrt(0.16 * radius)) + 4;
  }, 0);
}

function gridPoint(vertex: Vertex): Point {
  const { x, y } = pointOf(vertex);
  return { x: toHundredth(x), y: toHundredth(y) };
}

function same(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}

function inWords({ x, y }: { x: number; y: number }): string {
  return `x ${toMm(x)}, y ${toMm(y)}`;
}
