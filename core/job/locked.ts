import { isLocked, objectKinds } from './several';
import type { Job } from './schema';
import { findWall, objectsOf, type ObjectRef, type WallObject } from './shape';

/**
 * The first locked object that a change would move, resize or take off its wall; null if there is none. What is unlocked
 * by the same change is free, and so is everything on a wall that is taken down.
 */
export function lockedInTheWay(before: Job, after: Job): { wallId: string; ref: ObjectRef } | null {
  for (const wall of before.walls) {
    const now = findWall(after, wall.id);
    if (!now || now === wall) continue;
    for (const kind of objectKinds) {
      const [list, listNow] = [objectsOf(wall, kind), objectsOf(now, kind)];
      if (list === listNow) continue;
      for (const object of list.filter(isLocked)) {
        const there = listNow.find(({ id }) => id === object.id);
        if (there === object || (there && (!isLocked(there) || isInPlace(object, there)))) continue;
        return { wallId: wall.id, ref: { kind, id: object.id } };
      }
    }
  }
  return null;
}

const placeFields = ['x', 'y', 'width', 'height', 'circle', 'shape', 'holes'] as const;

function isInPlace(object: WallObject, there: WallObject): boolean {
  const [was, is] = [object, there] as unknown as Record<string, unknown>[];
  return placeFields.every(
    (field) => was![field] === is![field] || JSON.stringify(was![field]) === JSON.stringify(is![field]),
  );
}
