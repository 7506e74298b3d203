import { changeObject, removeObject } from '../../../core/job/changes';
import type { Fitting, Opening, Wall } from '../../../core/job/schema';
import {
  boxOfObject,
  findObject,
  findWall,
  type MmBox,
  type MmPoint,
  type ObjectRef,
} from '../../../core/job/shape';
import type { NamedChange } from './named-change';
import { nameOfObject } from './names';
import { stretchTo } from './objects';

/*
 * Changes that rows of the schedule make to one object. `wall` is only asked for the object's name; the change
 * itself works on whatever job it is given.
 */

type PlacedPatch = Partial<Opening & Fitting>;

const fieldWords: Readonly<Record<string, string>> = {
  kind: 'Change kind of',
  name: 'Rename',
  clearance: 'Set clearance of',
  hinge: 'Change hinge side of',
  swing: 'Change swing of',
  handle: 'Set handle height of',
  stop: 'Change the stop of',
};

export function setField(wall: Wall, ref: ObjectRef, patch: PlacedPatch): NamedChange {
  const [field = ''] = Object.keys(patch);
  return {
    name: `${fieldWords[field] ?? 'Change'} ${nameOfObject(wall, ref)}`,
    change: (job) => changeObject<Opening | Fitting>(job, wall.id, ref, patch as Partial<Opening | Fitting>),
  };
}

/** One figure of an object's box typed: a place moves it, a size makes it wider, higher and so on. */
export function setBox(wall: Wall, ref: ObjectRef, patch: Partial<MmBox>): NamedChange {
  const object = findObject(wall, ref);
  const before = object ? boxOfObject(object) : { x: 0, y: 0, width: 0, height: 0 };
  return stretchTo(wall, ref, { ...before, ...patch });
}

/** The middle of a circle to another place. */
export function setMiddle(wall: Wall, ref: ObjectRef, patch: Partial<MmPoint>): NamedChange {
  return changeCircle(wall, ref, 'Move', patch);
}

/** A new diameter about the same middle. */
export function setDiameter(wall: Wall, ref: ObjectRef, diameter: number): NamedChange {
  return changeCircle(wall, ref, 'Resize', { diameter });
}

export function takeOut(wall: Wall, ref: ObjectRef): NamedChange {
  return {
    name: `Delete ${nameOfObject(wall, ref)}`,
    change: (job) => removeObject(job, wall.id, ref),
  };
}

function changeCircle(
  wall: Wall,
  ref: ObjectRef,
  verb: string,
  patch: { x?: number; y?: number; diameter?: number },
): NamedChange {
  return {
    name: `${verb} ${nameOfObject(wall, ref)}`,
    change: (job) => {
      const found = findWall(job, wall.id);
      const object = found && (findObject(found, ref) as Opening | Fitting | undefined);
      if (!object?.circle) return job;
      const circle = { ...object.circle, ...patch };
      return changeObject<Opening | Fitting>(job, wall.id, ref, { circle });
    },
  };
}
