import type { Mm } from '../units';
import type { Corner, Job, Wall } from './schema';
import { boxOfVertices } from './shape';

/*
 * Walls that stand corner to corner. Every wall says what its own right end meets, so that a row of walls can be
 * followed from left to right as one stands in the room and turns clockwise:
 *
 *     ┌── A ──┐        A.corner = { to: 'B', kind: 'internal' }
 *     │       B        B.corner = { to: 'C', kind: 'external' }
 *     │       └──┐
 *     │       C  │
 */

/** Walls in order, corner to corner. */
export interface WallRow {
  readonly walls: readonly Wall[];
  /** The last one's corner leads to the first: a room all round. */
  readonly closed: boolean;
}

/**
 * The row that a wall stands in, from its left end; a wall without corners is a row of its own. A closed one begins with
 * the wall that is listed first.
 */
export function rowOfWall(job: Job, wallId: string): WallRow {
  const wall = job.walls.find(({ id }) => id === wallId);
  if (!wall) return { walls: [], closed: false };
  const first = leftmost(job, wall);
  const walls = [first.wall];
  for (;;) {
    const next = wallAfter(job, walls.at(-1)!);
    if (!next || walls.includes(next)) return { walls, closed: first.closed };
    walls.push(next);
  }
}

/** The rows of a wall's room: its own, then those of other walls with the same room, each once, in listed order. */
export function rowsOfRoom(job: Job, wallId: string): WallRow[] {
  const own = rowOfWall(job, wallId);
  const room = own.walls.find(({ id }) => id === wallId)?.room;
  const rows = own.walls.length > 0 ? [own] : [];
  for (const wall of job.walls) {
    if (!room || wall.room !== room) continue;
    if (rows.some(({ walls }) => walls.includes(wall))) continue;
    rows.push(rowOfWall(job, wall.id));
  }
  // Listed order, so that the strip stays where it is when another of its walls is shown.
  const place = ({ walls }: WallRow) => Math.min(...walls.map((wall) => job.walls.indexOf(wall)));
  return rows.sort((a, b) => place(a) - place(b));
}

/** The wall that this one's right end meets. */
export function wallAfter(job: Job, { corner }: Wall): Wall | undefined {
  return corner && job.walls.find(({ id }) => id === corner.to);
}

/** The wall whose right end meets this one's left end. */
export function wallBefore(job: Job, { id }: Wall): Wall | undefined {
  return job.walls.find(({ corner }) => corner?.to === id);
}

function leftmost(job: Job, wall: Wall): { wall: Wall; closed: boolean } {
  const seen = [wall];
  for (;;) {
    const before = wallBefore(job, seen.at(-1)!);
    if (!before) return { wall: seen.at(-1)!, closed: false };
    if (before === wall) {
      return {
        wall: seen.reduce((a, b) => (job.walls.indexOf(b) < job.walls.indexOf(a) ? b : a)),
        closed: true,
      };
    }
    if (seen.includes(before)) return { wall, closed: false };
    seen.push(before);
  }
}

/** Where a wall ends, in its own frame. */
export function endsOf({ outline }: Wall): { readonly left: Mm; readonly right: Mm } {
  const { x, width } = boxOfVertices(outline);
  return { left: x, right: tidy(x + width) };
}

export function riseOf({ corner }: Wall): Mm {
  return corner?.rise ?? 0;
}

export const usualAngle = 90;

/** By how much one turns at the corner, degrees: to the right in an internal one, to the left round an external one. */
export function turnAt({ kind, angle = usualAngle }: Corner): number {
  return kind === 'internal' ? 180 - angle : angle - 180;
}

function tidy(length: Mm): Mm {
  return Math.round(length * 100) / 100;
}
