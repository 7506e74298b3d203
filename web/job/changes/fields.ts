import { changeObject, copyObject, fitObject, removeObject } from '../../../core/job/changes';
import type { Fitting, Opening, Wall } from '../../../core/job/schema';
import { boxOfObject, findObject, findWall, type MmBox, type ObjectRef } from '../../../core/job/shape';
import type { NamedChange } from './named-change';
import { nameOfObject } from './names';

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
};

export function setField(wall: Wall, ref: ObjectRef, patch: PlacedPatch): NamedChange {
  const [field = ''] = Object.keys(patch);
  return {
    name: `${fieldWords[field] ?? 'Change'} ${nameOfObject(wall, ref)}`,
    change: (job) => changeObject<Opening | Fitting>(job, wall.id, ref, patch as Partial<Opening | Fitting>),
  };
}

/** One figure of an object's box typed: place figures move it, size figures resize it. */
export function setBox(wall: Wall, ref: ObjectRef, patch: Partial<MmBox>): NamedChange {
  const resizes = 'width' in patch || 'height' in patch;
  return {
    name: `${resizes ? 'Resize' : 'Move'} ${nameOfObject(wall, ref)}`,
    change: (job) => {
      const found = findWall(job, wall.id);
      const object = found && findObject(found, ref);
      return object ? fitObject(job, wall.id, ref, { ...boxOfObject(object), ...patch }) : job;
    },
  };
}

/** A new diameter about the same middle. */
export function setDiameter(wall: Wall, ref: ObjectRef, diameter: number): NamedChange {
  return {
    name: `Resize ${nameOfObject(wall, ref)}`,
    change: (job) => {
      const found = findWall(job, wall.id);
      const object = found && (findObject(found, ref) as Opening | Fitting | undefined);
      if (!object?.circle) return job;
      return changeObject<Opening | Fitting>(job, wall.id, ref, { circle: { ...object.circle, diameter } });
    },
  };
}

export function takeOut(wall: Wall, ref: ObjectRef): NamedChange {
  return {
    name: `Delete ${nameOfObject(wall, ref)}`,
    change: (job) => removeObject(job, wall.id, ref),
  };
}

/** A copy a hand's breadth to the right. */
export function copyBeside(wall: Wall, ref: ObjectRef): NamedChange {
  return {
    name: `Copy ${nameOfObject(wall, ref)}`,
    change: (job) => copyObject(job, wall.id, ref, 100, 0),
  };
}
