import { changeWall, freshId, moved } from './changes';
import type { Job, Wall, Zone } from './schema';
import { findObject, findWall, objectsOf, type ObjectRef, type WallObject } from './shape';

/*
 * Changes of several objects of a wall at once. Each list of the wall is gone through once, however many objects change,
 * and whatever does not change stays the same object.
 */

export const objectKinds = ['opening', 'fitting', 'zone', 'hung'] as const;

/** Neither moved, resized nor deleted until it is unlocked. */
export function isLocked(object: WallObject): boolean {
  return object.locked === true;
}

/** The objects that are there and not locked. */
export function unlocked(wall: Wall, refs: readonly ObjectRef[]): ObjectRef[] {
  return refs.filter((ref) => {
    const object = findObject(wall, ref);
    return object !== undefined && !isLocked(object);
  });
}

/** Every object of the wall, in the order of its lists. */
export function allObjects(wall: Wall): ObjectRef[] {
  return objectKinds.flatMap((kind) => objectsOf(wall, kind).map(({ id }) => ({ kind, id })));
}

export function sameObject(a: ObjectRef | null, b: ObjectRef | null): boolean {
  return a?.kind === b?.kind && a?.id === b?.id;
}

export function changeObjects(
  job: Job,
  wallId: string,
  refs: readonly ObjectRef[],
  change: (object: WallObject, ref: ObjectRef) => WallObject,
): Job {
  return mapLists(job, wallId, refs, (object, ref) => [change(object, ref)]);
}

export function moveObjects(
  job: Job,
  wallId: string,
  refs: readonly ObjectRef[],
  dx: number,
  dy: number,
): Job {
  return dx === 0 && dy === 0 ? job : changeObjects(job, wallId, refs, (object) => moved(object, dx, dy));
}

/** How far one of several objects goes. */
export interface Shift {
  readonly ref: ObjectRef;
  readonly dx: number;
  readonly dy: number;
}

/** Each object by a distance of its own. */
export function shiftObjects(job: Job, wallId: string, shifts: readonly Shift[]): Job {
  const going = shifts.filter(({ dx, dy }) => dx !== 0 || dy !== 0);
  const byKey = new Map(going.map((shift) => [keyOf(shift.ref), shift]));
  return changeObjects(
    job,
    wallId,
    going.map(({ ref }) => ref),
    (object, ref) => {
      const { dx, dy } = byKey.get(keyOf(ref))!;
      return moved(object, dx, dy);
    },
  );
}

export function removeObjects(job: Job, wallId: string, refs: readonly ObjectRef[]): Job {
  return mapLists(job, wallId, refs, () => []);
}

/**
 * Copies under fresh ids, moved by (dx, dy), each listed right after its original.
 *
 * @returns the job and the copies, in the order of `refs`
 */
export function copyObjects(
  job: Job,
  wallId: string,
  refs: readonly ObjectRef[],
  dx: number,
  dy: number,
): { job: Job; copies: ObjectRef[] } {
  const wall = findWall(job, wallId);
  const copies = new Map<string, WallObject>();
  const made: ObjectRef[] = [];
  if (!wall) return { job, copies: made };
  const takeId = idsFor(wall);
  for (const ref of refs) {
    const object = findObject(wall, ref);
    if (!object) continue;
    // A copy is there to be put somewhere else,
    // and a zone runs on round a corner only once.
    const { locked: _, runsOn: __, ...free } = moved(object as Zone, dx, dy);
    const copy = { ...free, id: takeId(prefixOf(object.id, ref.kind)) } as WallObject;
    copies.set(keyOf(ref), copy);
    made.push({ kind: ref.kind, id: copy.id });
  }
  const after = mapLists(job, wallId, refs, (object, ref) => [object, copies.get(keyOf(ref))!]);
  return { job: after, copies: made };
}

/** Gives out ids that the wall has not, each once. */
export function idsFor(wall: Wall): (prefix: string) => string {
  const given: Zone[] = [];
  return (prefix) => {
    const id = freshId({ ...wall, zones: [...wall.zones, ...given] }, prefix);
    given.push({ id } as Zone);
    return id;
  };
}

/** What an id begins with: K of K4. */
export function prefixOf(id: string, kind: ObjectRef['kind']): string {
  return id.replace(/\d+$/, '') || kind;
}

function mapLists(
  job: Job,
  wallId: string,
  refs: readonly ObjectRef[],
  change: (object: WallObject, ref: ObjectRef) => readonly WallObject[],
): Job {
  const chosen = new Set(refs.map(keyOf));
  return changeWall(job, wallId, (wall) => {
    const through = <T extends WallObject>(list: readonly T[], kind: ObjectRef['kind']): T[] => {
      if (!list.some(({ id }) => chosen.has(keyOf({ kind, id })))) return list as T[];
      return list.flatMap((object) => {
        const ref = { kind, id: object.id };
        return chosen.has(keyOf(ref)) ? (change(object, ref) as readonly T[]) : [object];
      });
    };
    const openings = through(wall.openings, 'opening');
    const fittings = through(wall.fittings, 'fitting');
    const zones = through(wall.zones, 'zone');
    const hung = wall.hung && through(wall.hung, 'hung');
    const isSame =
      openings === wall.openings && fittings === wall.fittings && zones === wall.zones && hung === wall.hung;
    return isSame ? wall : { ...wall, openings, fittings, zones, ...(hung && { hung }) };
  });
}

function keyOf({ kind, id }: ObjectRef): string {
  return `${kind} ${id}`;
}
