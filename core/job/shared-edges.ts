import type { Mm } from '../units';
import { changeWall } from './changes';
import type { Job, Vertex, Wall, Zone } from './schema';
import { boxOfVertices, pointOf, type MmPoint } from './shape';
import { outermostRun, type ZoneEdge } from './zone-edges';

/*
 * Zones that touch along a straight, upright or level edge: whoever moves the edge of one can move those of the
 * others with it, so that no gap opens between them and none comes to lie on another.
 *
 *     ┌────┬────┐        The edge between a and b moves by itself; the edge between a, b and c moves as one,
 *     │ a  │ b  │        whichever of the three it is moved of.
 *     ├────┴────┤
 *     │    c    │
 *     └─────────┘
 */

/** One straight edge of a zone on a line, which can move along the edges that meet it. */
interface LineEdge {
  readonly zone: string;
  readonly vertices: readonly number[];
  /** Its ends, along the line. */
  readonly from: Mm;
  readonly to: Mm;
  /** On which side of the line the zone lies: −1 left or below, 1 right or above. */
  readonly side: -1 | 1;
}

/** Edges of several zones that move as one. */
export interface SharedLine {
  readonly axis: 'x' | 'y';
  /** mm, wall frame. */
  readonly at: Mm;
  readonly edges: readonly LineEdge[];
  /** The zones whose edges they are, the one that was asked for first. */
  readonly zones: readonly string[];
  /** How far it can move left or down (negative) and right or up before some zone gets too narrow, mm. */
  readonly least: Mm;
  readonly most: Mm;
}

/** No zone is left narrower than this, mm, as a hand leaves none. */
export const leastSide = 5;

/**
 * The line of touching edges that an outermost edge of a zone belongs to.
 *
 * @param through at this corner another edge moves too: zones that meet the first one only in it come along, where a
 *   zone lies diagonally opposite
 * @returns null where no other zone touches the edge with a straight edge that can follow it
 */
export function sharedLine(
  wall: Pick<Wall, 'zones'>,
  zoneId: string,
  edge: ZoneEdge,
  through?: MmPoint,
): SharedLine | null {
  const zone = wall.zones.find(({ id }) => id === zoneId);
  const run = zone && outermostRun(zone.shape, edge);
  if (!zone || !run) return null;
  const axis = edge === 'left' || edge === 'right' ? 'x' : 'y';
  const at = pointOf(zone.shape[run.first]!)[axis];
  const all = wall.zones.flatMap((other) => edgesOnLine(other, axis, at));
  const first = all.find(({ zone: id, vertices }) => id === zoneId && vertices.includes(run.first));
  if (!first) return null;
  const edges = touching(all, [first, ...(through ? atCorner(all, first, axis, through, wall) : [])]);
  const zones = [...new Set([zoneId, ...edges.map((one) => one.zone)])];
  if (zones.length < 2) return null;
  const moving = wall.zones.filter(({ id }) => zones.includes(id));
  return {
    axis,
    at,
    edges,
    zones,
    least: -Math.min(...moving.map((one) => reachOf(one, axis, at, -1))),
    most: Math.min(...moving.map((one) => reachOf(one, axis, at, 1))),
  };
}

/** All edges of the line moved, as far as it can go; `except` stays as it is. */
export function moveSharedLine(job: Job, wallId: string, line: SharedLine, by: Mm, except?: string): Job {
  const to = tidy(line.at + Math.min(line.most, Math.max(line.least, by)));
  if (to === line.at) return job;
  const moved = (zone: Zone): Zone => {
    const own = line.edges.filter(({ zone: id }) => id === zone.id && id !== except);
    if (own.length === 0) return zone;
    const indexes = new Set(own.flatMap(({ vertices }) => vertices));
    const shape = zone.shape.map((vertex, i): Vertex => {
      if (!indexes.has(i)) return vertex;
      const { x, y } = pointOf(vertex);
      return line.axis === 'x' ? [to, y] : [x, to];
    });
    return { ...zone, shape };
  };
  return changeWall(job, wallId, (wall) => ({ ...wall, zones: wall.zones.map(moved) }));
}

/** Straight edges of a zone on a line, of which both neighbours stand square to it. */
function edgesOnLine({ id, shape }: Zone, axis: 'x' | 'y', at: Mm): LineEdge[] {
  const count = shape.length;
  const across = axis === 'x' ? 'y' : 'x';
  const point = (i: number) => pointOf(shape[(i + count) % count]!);
  const lies = (i: number) => same(point(i)[axis], at);
  const edges: LineEdge[] = [];
  for (let i = 0; i < count; i++) {
    if (!lies(i) || lies(i - 1)) continue;
    const vertices = [i];
    while (vertices.length < count && lies(vertices.at(-1)! + 1))
      vertices.push((vertices.at(-1)! + 1) % count);
    const last = vertices.at(-1)!;
    const straight = [...vertices, (last + 1) % count].every((index) => Array.isArray(shape[index]));
    const square =
      same(point(i - 1)[across], point(i)[across]) && same(point(last + 1)[across], point(last)[across]);
    if (vertices.length < 2 || !straight || !square) continue;
    const [start, end] = [point(i)[across], point(last)[across]];
    // Anticlockwise, an upright edge that runs up has its zone on the left, a level one to the right above it.
    const forward = end > start === isAnticlockwise(shape) ? 1 : -1;
    const side = (axis === 'x' ? -forward : forward) as -1 | 1;
    edges.push({ zone: id, vertices, from: Math.min(start, end), to: Math.max(start, end), side });
  }
  return edges;
}

/** The edges that are reached from the first ones by going from edge to edge across the line. */
function touching(all: readonly LineEdge[], first: readonly LineEdge[]): LineEdge[] {
  const found = [...new Set(first)];
  for (const edge of found) {
    for (const other of all) {
      const overlap = Math.min(edge.to, other.to) - Math.max(edge.from, other.from);
      if (other.side !== edge.side && overlap > nothing && !found.includes(other)) found.push(other);
    }
  }
  return found;
}

/** Edges that end in a corner in which four zones may meet, if one lies diagonally opposite the first. */
function atCorner(
  all: readonly LineEdge[],
  first: LineEdge,
  axis: 'x' | 'y',
  corner: MmPoint,
  { zones }: Pick<Wall, 'zones'>,
): LineEdge[] {
  const across = axis === 'x' ? 'y' : 'x';
  const ending = all.filter(({ from, to }) => same(from, corner[across]) || same(to, corner[across]));
  const below = same(first.to, corner[across]);
  const opposite = ending.some(
    ({ zone, side, from, to }) =>
      side !== first.side &&
      same(below ? from : to, corner[across]) &&
      zones.some(({ id, shape }) => id === zone && shape.some((vertex) => isAt(vertex, corner))),
  );
  return opposite ? ending : [];
}

/** How far an edge on the line may go to one side before it meets another corner or a hole of its zone. */
function reachOf({ shape, holes }: Zone, axis: 'x' | 'y', at: Mm, way: -1 | 1): Mm {
  const index = axis === 'x' ? 0 : 1;
  const places = [
    ...shape.flatMap((vertex) =>
      Array.isArray(vertex) ? [vertex[index]] : [vertex.arcTo[index], vertex.via[index]],
    ),
    ...holes.flatMap((hole) => {
      const box = boxOfVertices(hole);
      return axis === 'x' ? [box.x, box.x + box.width] : [box.y, box.y + box.height];
    }),
  ];
  const ahead = places.map((place) => (place - at) * way).filter((distance) => distance > nothing);
  return Math.max(0, tidy(Math.min(...ahead) - leastSide));
}

function isAnticlockwise(shape: readonly Vertex[]): boolean {
  const points = shape.flatMap((vertex) => (Array.isArray(vertex) ? [vertex] : [vertex.via, vertex.arcTo]));
  return (
    points.reduce((sum, [x, y], i) => {
      const [nextX, nextY] = points[(i + 1) % points.length]!;
      return sum + x * nextY - nextX * y;
    }, 0) > 0
  );
}

function isAt(vertex: Vertex, point: MmPoint): boolean {
  const { x, y } = pointOf(vertex);
  return same(x, point.x) && same(y, point.y);
}

/** Less than half a hundredth, the step of the clipping kernel. */
const nothing = 0.005;

function same(a: Mm, b: Mm): boolean {
  return Math.abs(a - b) < nothing;
}

function tidy(length: Mm): Mm {
  return Math.round(length * 100) / 100;
}
