import { boxOfVertices, findWall, isRectangle, type MmBox } from './shape';
import type { Job, Wall, Zone } from './schema';
import { toMm } from '../units';
import { keepInStep } from './keep-in-step';
import { growZone, inwardReach, zoneEdges, type ZoneEdge, type ZoneGrowth } from './zone-edges';
import { nextPart, partBefore, runKey, zoneRuns, type RunPart, type ZoneRun } from './zone-runs';

/*
 * A zone whose lines run round corners is one length: its left edge is that of the first part, its right edge that of
 * the last, and the edges at the corners stay there.
 */

/** A part of a zone, and the wall that it is on. */
export interface ZonePart {
  readonly wall: Wall;
  readonly zone: Zone;
}

/** The parts whose lines continue, from the left; the zone alone where they do not. Undefined if it is not there. */
export function lengthOfZone(job: Job, wallId: string, zoneId: string): ZoneRun | undefined {
  const wall = findWall(job, wallId);
  const zone = wall?.zones.find(({ id }) => id === zoneId);
  if (!wall || !zone) return undefined;
  return zoneRuns(job).get(runKey(wallId, zoneId)) ?? [{ wall, zone, dx: 0, dy: 0 }];
}

/** The part that an edge of the whole length belongs to; null where that edge lies in a corner, or cannot be moved. */
export function partOfEdge(job: Job, wallId: string, zoneId: string, edge: ZoneEdge): ZonePart | null {
  const run = lengthOfZone(job, wallId, zoneId);
  if (!run) return null;
  const own = run.find((part) => part.wall.id === wallId && part.zone.id === zoneId)!;
  const part = edge === 'left' ? run[0]! : edge === 'right' ? run.at(-1)! : own;
  const { wall, zone } = part;
  if (edge === 'left' && partBefore(job, wall.id, zone.id)) return null;
  if (edge === 'right' && nextPart(job, wall, zone)) return null;
  return inwardReach(zone, edge) === null ? null : { wall, zone };
}

/** The edges of the whole length that can be moved. */
export function movableEdges(job: Job, wallId: string, zoneId: string): ZoneEdge[] {
  return zoneEdges.filter((edge) => partOfEdge(job, wallId, zoneId, edge) !== null);
}

/**
 * The whole length grown by moving its edges; heights go along round the corners. The job as it was where one of the edges
 * cannot be moved so far.
 */
export function growRun(job: Job, wallId: string, zoneId: string, growth: ZoneGrowth): Job {
  let grown = job;
  for (const edge of zoneEdges) {
    const by = growth[edge] ?? 0;
    if (by === 0) continue;
    const part = partOfEdge(grown, wallId, zoneId, edge);
    const next = part && growZone(grown, part.wall.id, part.zone.id, { [edge]: by });
    if (!next || next === grown) return job;
    grown = keepInStep(grown, next);
  }
  return grown;
}

/** The whole length folded out flat, in the wall frame of one of its parts, mm. */
export interface FoldedLength {
  readonly box: MmBox;
  /** Box of the walls that it runs along. */
  readonly room: MmBox;
  /** Every part is a rectangle, and all are equally high. */
  readonly isRectangle: boolean;
  readonly parts: number;
  /** Ends that stay in a corner, as the zone goes on there with lines of its own. */
  readonly held: { readonly left: boolean; readonly right: boolean };
}

export function foldedLength(job: Job, wallId: string, zoneId: string): FoldedLength | undefined {
  const run = lengthOfZone(job, wallId, zoneId);
  const own = run?.find((part) => part.wall.id === wallId && part.zone.id === zoneId);
  if (!run || !own) return undefined;
  const boxes = run.map((part) => folded(boxOfVertices(part.zone.shape), part, own));
  const rooms = run.map((part) => folded(boxOfVertices(part.wall.outline), part, own));
  const [first] = boxes;
  const isLevel = boxes.every(
    ({ y, height }) => Math.abs(y - first!.y) < 0.005 && Math.abs(height - first!.height) < 0.005,
  );
  return {
    box: around(boxes),
    room: { ...around(rooms), ...commonHeights(rooms) },
    isRectangle: isLevel && run.every(({ zone }) => isRectangle(zone.shape)),
    parts: run.length,
    held: {
      left: partBefore(job, run[0]!.wall.id, run[0]!.zone.id) !== undefined,
      right: nextPart(job, run.at(-1)!.wall, run.at(-1)!.zone) !== undefined,
    },
  };
}

function folded({ x, y, width, height }: MmBox, part: RunPart, own: RunPart): MmBox {
  return { x: x - toMm(part.dx - own.dx), y: y - toMm(part.dy - own.dy), width, height };
}

function around(boxes: readonly MmBox[]): MmBox {
  const left = Math.min(...boxes.map(({ x }) => x));
  const bottom = Math.min(...boxes.map(({ y }) => y));
  const right = Math.max(...boxes.map(({ x, width }) => x + width));
  const top = Math.max(...boxes.map(({ y, height }) => y + height));
  return { x: left, y: bottom, width: right - left, height: top - bottom };
}

/** No part can be higher than its own wall. */
function commonHeights(boxes: readonly MmBox[]): Pick<MmBox, 'y' | 'height'> {
  const bottom = Math.max(...boxes.map(({ y }) => y));
  const top = Math.min(...boxes.map(({ y, height }) => y + height));
  return { y: bottom, height: Math.max(0, top - bottom) };
}
