import { boxOfOutline, flattenVertices } from '../geometry/arc';
import { boxOf } from '../geometry/polygon';
import { toMm, type Mm } from '../units';
import { changeObject } from './changes';
import type { Job, Vertex, Zone } from './schema';
import { findWall, pointOf } from './shape';

/*
 * A zone made wider or higher by moving its outermost edges. Only an edge that is straight, upright or level, can
 * be moved; the edges that meet it keep their directions.
 */

export const zoneEdges = ['left', 'right', 'bottom', 'top'] as const;
export type ZoneEdge = (typeof zoneEdges)[number];

/** By how much each edge moves outwards; inwards if negative. */
export type ZoneGrowth = { readonly [edge in ZoneEdge]?: Mm };

/** The zone grown by moving its edges; the job as it was where one of them cannot be moved so far. */
export function growZone(job: Job, wallId: string, zoneId: string, growth: ZoneGrowth): Job {
  const zone = findWall(job, wallId)?.zones.find(({ id }) => id === zoneId);
  if (!zone) return job;
  let shape: readonly Vertex[] = zone.shape;
  for (const edge of zoneEdges) {
    const by = growth[edge] ?? 0;
    if (by === 0) continue;
    const moved = moveEdge({ ...zone, shape: [...shape] }, edge, by);
    if (!moved) return job;
    shape = moved;
  }
  if (shape === zone.shape) return job;
  return changeObject<Zone>(job, wallId, { kind: 'zone', id: zoneId }, { shape: [...shape] });
}

/**
 * How far an edge of a zone can be moved inwards, in mm: as long as it passes no other corner of the zone nor one of
 * its holes. Null where the zone has no straight edge on that side, or one that a curve meets.
 */
export function inwardReach(zone: Zone, edge: ZoneEdge): Mm | null {
  const run = outermostRun(zone.shape, edge);
  if (!run) return null;
  const { along, sign } = directions[edge];
  const at = pointOf(zone.shape[run.first]!)[along];
  let reach = Infinity;
  for (const [i, vertex] of zone.shape.entries()) {
    if (run.has(i)) continue;
    const inward = (at - pointOf(vertex)[along]) * sign;
    reach = Math.min(reach, inward);
    if (!Array.isArray(vertex)) reach = Math.min(reach, (at - vertex.via[along === 'x' ? 0 : 1]) * sign);
  }
  for (const hole of zone.holes) {
    const box = boxOf(flattenVertices(hole, 'circumscribed').ring);
    const nearest = { left: box.left, right: box.right, bottom: box.bottom, top: box.top }[edge];
    reach = Math.min(reach, (at - toMm(nearest)) * sign);
  }
  return Math.max(0, tidy(reach - leastLeft));
}

/** What is left between a moved edge and the next corner, mm. */
const leastLeft = 1;

const directions = {
  left: { along: 'x', across: 'y', sign: -1 },
  right: { along: 'x', across: 'y', sign: 1 },
  bottom: { along: 'y', across: 'x', sign: -1 },
  top: { along: 'y', across: 'x', sign: 1 },
} as const;

function moveEdge(zone: Zone, edge: ZoneEdge, by: Mm): Vertex[] | null {
  const run = outermostRun(zone.shape, edge);
  const reach = inwardReach(zone, edge);
  if (!run || reach === null || -by > reach) return null;
  const { along, across, sign } = directions[edge];
  const count = zone.shape.length;
  const vertices = [...zone.shape];
  const slide = (index: number, neighbour: number) => {
    const [own, other] = [pointOf(zone.shape[index]!), pointOf(zone.shape[neighbour]!)];
    const to = own[along] + by * sign;
    const beside = own[across] + ((own[across] - other[across]) * by * sign) / (own[along] - other[along]);
    vertices[index] = along === 'x' ? [tidy(to), tidy(beside)] : [tidy(beside), tidy(to)];
  };
  for (const index of run.inner) {
    const own = pointOf(zone.shape[index]!);
    const to = tidy(own[along] + by * sign);
    vertices[index] = along === 'x' ? [to, own[across]] : [own[across], to];
  }
  slide(run.first, (run.first + count - 1) % count);
  slide(run.last, (run.last + 1) % count);
  // Slopes that meet the edge may have crossed on the way.
  const [a, b, c, d] = [zone.shape, vertices]
    .flatMap((list) => [list[run.first]!, list[run.last]!])
    .map(pointOf);
  const [before, after] = [b![across] - a![across], d![across] - c![across]];
  return Math.sign(before) === Math.sign(after) && Math.abs(after) >= leastLeft ? vertices : null;
}

/** Vertices of one straight edge on a side of the shape's box, from the first to the last as they are listed. */
export interface Run {
  readonly first: number;
  readonly last: number;
  readonly inner: readonly number[];
  has(index: number): boolean;
}

/** The one straight edge on a side of the shape's box, with straight edges on either side of it; null if there is none. */
export function outermostRun(shape: readonly Vertex[], edge: ZoneEdge): Run | null {
  const { along } = directions[edge];
  const count = shape.length;
  const at = toMm(boxOfOutline(flattenVertices(shape, 'inscribed'))[edge]);
  const lies = (i: number) => Math.abs(pointOf(shape[(i + count) % count]!)[along] - at) < 0.005;
  const first = shape.findIndex((_, i) => lies(i) && !lies(i - 1));
  if (first < 0) return null;
  const members = [first];
  while (lies(members.at(-1)! + 1) && members.length < count) members.push((members.at(-1)! + 1) % count);
  const last = members.at(-1)!;
  const onSide = shape.filter((_, i) => lies(i)).length;
  // One straight edge, and straight edges on either side of it.
  const entering = [...members, (last + 1) % count].map((i) => shape[i]!);
  if (members.length < 2 || onSide > members.length || !entering.every(Array.isArray)) return null;
  return { first, last, inner: members.slice(1, -1), has: (i) => members.includes(i) };
}

function tidy(length: Mm): Mm {
  return Math.round(length * 100) / 100;
}
