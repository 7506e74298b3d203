import {
  addWall,
  bendEdge,
  changeWall,
  copyWall as putUpCopy,
  freshWallId,
  insertVertex,
  moveVertex,
  removeVertex,
  removeWall,
  resizeOutline,
} from '../../../core/job/changes';
import { addQuickWall, type QuickWall } from '../../../core/job/quick-wall';
import type { Rim, Wall } from '../../../core/job/schema';
import { findWall, type MmPoint, type ShapeRef } from '../../../core/job/shape';
import type { NamedChange } from './named-change';
import { nameOfWall } from './names';

export function putUpWall(wall: Wall): NamedChange {
  return { name: `Add ${nameOfWall(wall.id)}`, change: (job) => addWall(job, wall) };
}

/** A wall with its openings and zone in one change. */
export function putUpQuickWall(wall: QuickWall, id: string): NamedChange {
  return { name: `Add ${nameOfWall(id)}`, change: (job) => addQuickWall(job, wall) };
}

export function takeDownWall(wallId: string): NamedChange {
  return { name: `Delete ${nameOfWall(wallId)}`, change: (job) => removeWall(job, wallId) };
}

/** A copy with everything on it, under the next free letter, listed right after the original. */
export function copyWall(wallId: string): NamedChange {
  return {
    name: `Copy ${nameOfWall(wallId)}`,
    change: (job) => {
      const wall = findWall(job, wallId);
      if (!wall) return job;
      const name = wall.name ? `${wall.name}, copy` : '';
      return putUpCopy(job, wallId, { id: freshWallId(job), name });
    },
  };
}

/** An earlier (−1) or later (+1) place in the list of walls. */
export function reorderWall(wallId: string, by: -1 | 1): NamedChange {
  return {
    name: `Move ${nameOfWall(wallId)} in the list`,
    change: (job) => {
      const from = job.walls.findIndex((wall) => wall.id === wallId);
      const to = from + by;
      if (from < 0 || to < 0 || to >= job.walls.length) return job;
      const walls = [...job.walls];
      walls.splice(to, 0, ...walls.splice(from, 1));
      return { ...job, walls };
    },
  };
}

export function renameWall(wallId: string, name: string): NamedChange {
  return {
    name: `Rename ${nameOfWall(wallId)}`,
    change: (job) => changeWall(job, wallId, (wall) => (wall.name === name ? wall : { ...wall, name })),
  };
}

/** The group of walls that are ordered and cut together; an empty name takes the wall out of its group. */
export function setDelivery(wallId: string, delivery: string): NamedChange {
  return {
    name: `Set delivery of ${nameOfWall(wallId)}`,
    change: (job) =>
      changeWall(job, wallId, (wall) => {
        const { delivery: _, ...rest } = wall;
        return (delivery ? { ...rest, delivery } : rest) as Wall;
      }),
  };
}

/** Panels are bundled and labelled by room; an empty name takes the wall out of its room. */
export function setRoom(wallId: string, room: string): NamedChange {
  return {
    name: `Set room of ${nameOfWall(wallId)}`,
    change: (job) =>
      changeWall(job, wallId, (wall) => {
        const { room: _, ...rest } = wall;
        return (room ? { ...rest, room } : rest) as Wall;
      }),
  };
}

export function setRim(
  wallId: string,
  side: 'floor' | 'ceiling' | 'left' | 'right',
  mm: number,
): NamedChange {
  return {
    name: `Set rim of ${nameOfWall(wallId)}`,
    change: (job) =>
      changeWall(job, wallId, (wall) => ({ ...wall, rim: { ...wall.rim, [side]: mm } as Rim })),
  };
}

export function setWallSize(wallId: string, width: number, height: number): NamedChange {
  return {
    name: `Resize ${nameOfWall(wallId)}`,
    change: (job) => resizeOutline(job, wallId, width, height),
  };
}

/** `ref` null: the wall's outline; else an object's free shape. */
export function setCorner(wallId: string, ref: ShapeRef | null, index: number, to: MmPoint): NamedChange {
  return {
    name: `Move corner ${index + 1} of ${shapeName(wallId, ref)}`,
    change: (job) => moveVertex(job, wallId, ref, index, to),
  };
}

export function putInCorner(wallId: string, ref: ShapeRef | null, index: number, at: MmPoint): NamedChange {
  return {
    name: `Put in corner ${index + 1} of ${shapeName(wallId, ref)}`,
    change: (job) => insertVertex(job, wallId, ref, index, at),
  };
}

/** The edge that ends at a corner as an arc of a rise; straight with none. */
export function bend(wallId: string, ref: ShapeRef | null, index: number, rise: number): NamedChange {
  const edge = `the edge to corner ${index + 1} of ${shapeName(wallId, ref)}`;
  return {
    name: rise === 0 ? `Straighten ${edge}` : `Bend ${edge}`,
    change: (job) => bendEdge(job, wallId, ref, index, rise),
  };
}

export function takeOutCorner(wallId: string, ref: ShapeRef | null, index: number): NamedChange {
  return {
    name: `Take out corner ${index + 1} of ${shapeName(wallId, ref)}`,
    change: (job) => removeVertex(job, wallId, ref, index),
  };
}

function shapeName(wallId: string, ref: ShapeRef | null): string {
  if (!ref) return nameOfWall(wallId);
  return ref.hole === undefined ? `${ref.kind} ${ref.id}` : `hole ${ref.hole + 1} of zone ${ref.id}`;
}
