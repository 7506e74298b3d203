import { changeWall, copyObject, fitObject, moveObject } from '../../../core/job/changes';
import type { Job, Vertex, Wall } from '../../../core/job/schema';
import {
  boxOfObject,
  findObject,
  findWall,
  objectsOf,
  type MmBox,
  type ObjectRef,
} from '../../../core/job/shape';
import type { NamedChange } from './named-change';
import { nameOfObject, nameOfWall } from './names';

/*
 * What a hand does to an object on the wall, by drag, arrow key or typed figure alike. `wall` is the wall before
 * the change; the change itself works on whatever job it is given.
 */

export function moveBy(wall: Wall, ref: ObjectRef, dx: number, dy: number): NamedChange {
  return {
    name: `Move ${nameOfObject(wall, ref)}`,
    change: (job) => moveObject(job, wall.id, ref, dx, dy),
  };
}

/** The object into another box, named by what that does to its size: "Make zone Z1 wider". */
export function stretchTo(wall: Wall, ref: ObjectRef, box: MmBox): NamedChange {
  const object = findObject(wall, ref);
  return {
    name: object ? nameOfStretch(nameOfObject(wall, ref), boxOfObject(object), box) : 'Resize',
    change: (job) => fitObject(job, wall.id, ref, box),
  };
}

/** A copy at a distance; `copy` says what it is called in the job it is made for. */
export function copyTo(
  job: Job,
  wall: Wall,
  ref: ObjectRef,
  dx: number,
  dy: number,
): NamedChange & { copy: ObjectRef } {
  return {
    name: `Copy ${nameOfObject(wall, ref)}`,
    change: (start) => copyObject(start, wall.id, ref, dx, dy),
    copy: { kind: ref.kind, id: idOfCopy(job, wall, ref) },
  };
}

/** The wall's upright edges at one x, or its level edges at one y, to another place. */
export function moveWallEdge(wall: Wall, axis: 'x' | 'y', from: number, to: number): NamedChange {
  const index = axis === 'x' ? 0 : 1;
  const movePoint = (point: readonly [number, number]): [number, number] => {
    const moved: [number, number] = [...point];
    if (Math.abs(moved[index] - from) < 0.005) moved[index] = to;
    return moved;
  };
  const moveVertex = (vertex: Vertex): Vertex =>
    Array.isArray(vertex) ? movePoint(vertex) : { ...vertex, arcTo: movePoint(vertex.arcTo) };
  return {
    name: `Move an edge of ${nameOfWall(wall.id)}`,
    change: (job) =>
      changeWall(job, wall.id, (found) => ({ ...found, outline: found.outline.map(moveVertex) })),
  };
}

export function redrawOutline(wall: Wall, outline: readonly Vertex[]): NamedChange {
  return {
    name: `Draw the outline of ${nameOfWall(wall.id)}`,
    change: (job) => changeWall(job, wall.id, (found) => ({ ...found, outline: [...outline] })),
  };
}

function nameOfStretch(name: string, before: MmBox, after: MmBox): string {
  const width = after.width - before.width;
  const height = after.height - before.height;
  if (width !== 0 && height !== 0) return `Resize ${name}`;
  if (width !== 0) return `Make ${name} ${width > 0 ? 'wider' : 'narrower'}`;
  if (height !== 0) return `Make ${name} ${height > 0 ? 'higher' : 'lower'}`;
  return `Move ${name}`;
}

/** The id that the wall had not before. */
function idOfCopy(job: Job, wall: Wall, ref: ObjectRef): string {
  const known = new Set(objectsOf(wall, ref.kind).map(({ id }) => id));
  const after = findWall(copyObject(job, wall.id, ref, 0, 0), wall.id);
  return (after && objectsOf(after, ref.kind).find(({ id }) => !known.has(id))?.id) ?? ref.id;
}
