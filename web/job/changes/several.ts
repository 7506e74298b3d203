import {
  type AlignedPart,
  alignShifts,
  type Boxed,
  type Spacing,
  spaceShifts,
} from '../../../core/job/arrange';
import { extentOf } from '../../../core/job/extent';
import { hungKindInWords } from '../../../core/job/hung-kinds';
import type { HungItem } from '../../../core/job/hung-schema';
import { mirrored, type MirrorLine, turnedBy } from '../../../core/job/mirror';
import { scaleObjects } from '../../../core/job/scale';
import type { Fitting, Job, Opening, Wall } from '../../../core/job/schema';
import {
  changeObjects,
  copyObjects,
  isLocked,
  moveObjects,
  removeObjects,
  shiftObjects,
  unlocked,
  type Shift,
} from '../../../core/job/several';
import { findObject, type MmBox, type MmPoint, type ObjectRef } from '../../../core/job/shape';
import type { NamedChange } from './named-change';
import { kindName, nameOfObject } from './names';

/*
 * What is done to everything that is chosen, as one change. What is locked stays as it is; `wall` is the wall before the
 * change.
 */

type Refs = readonly ObjectRef[];

/** "3 sockets", "4 zones", "5 objects", or the name of the only one. */
export function nameOfSeveral(wall: Wall | undefined, refs: Refs): string {
  const [first] = refs;
  if (refs.length === 1 && first) return nameOfObject(wall, first);
  const kinds = new Set(refs.map((ref) => kindOf(wall, ref)));
  const [only] = kinds;
  return `${refs.length} ${kinds.size === 1 && only ? pluralOf(only) : 'objects'}`;
}

export function moveSeveral(wall: Wall, refs: Refs, dx: number, dy: number): NamedChange {
  const free = unlocked(wall, refs);
  return {
    name: `Move ${nameOfSeveral(wall, free)}`,
    change: (job) => moveObjects(job, wall.id, free, dx, dy),
  };
}

export function takeOutSeveral(wall: Wall, refs: Refs): NamedChange {
  const free = unlocked(wall, refs);
  return {
    name: `Delete ${nameOfSeveral(wall, free)}`,
    change: (job) => removeObjects(job, wall.id, free),
  };
}

/** Copies at a distance, locked ones too; `copies` says what they are called in the job they are made for. */
export function copySeveral(
  job: Job,
  wall: Wall,
  refs: Refs,
  dx: number,
  dy: number,
): NamedChange & { copies: ObjectRef[] } {
  return {
    name: `Copy ${nameOfSeveral(wall, refs)}`,
    change: (start) => copyObjects(start, wall.id, refs, dx, dy).job,
    copies: copyObjects(job, wall.id, refs, dx, dy).copies,
  };
}

/** `times` copies, each a step further than the one before. */
export function repeatSeveral(
  job: Job,
  wall: Wall,
  refs: Refs,
  { dx, dy }: { dx: number; dy: number },
  times: number,
): NamedChange & { copies: ObjectRef[] } {
  const repeat = (start: Job) => {
    let after = start;
    let row: Refs = refs;
    const made: ObjectRef[] = [];
    for (let n = 0; n < times; n++) {
      const step = copyObjects(after, wall.id, row, dx, dy);
      ({ job: after, copies: row } = step);
      made.push(...row);
    }
    return { after, made };
  };
  return {
    name: `Repeat ${nameOfSeveral(wall, refs)} ${times === 1 ? 'once' : `${times} times`}`,
    change: (start) => repeat(start).after,
    copies: repeat(job).made,
  };
}

const partWords: Readonly<Record<AlignedPart, string>> = {
  left: 'by their left edges',
  right: 'by their right edges',
  foot: 'by their feet',
  top: 'by their tops',
  'upright middle': 'one above the other',
  'level middle': 'side by side',
};

/** @param place where this part of each comes to lie: an x or a y, mm */
export function alignSeveral(wall: Wall, refs: Refs, part: AlignedPart, place: number): NamedChange {
  const free = unlocked(wall, refs);
  return {
    name: `Align ${nameOfSeveral(wall, free)} ${partWords[part]}`,
    change: (job) => shiftObjects(job, wall.id, alignShifts(boxed(wall, free), part, place)),
  };
}

export function spaceSeveral(
  wall: Wall,
  refs: Refs,
  axis: 'x' | 'y',
  spacing: Spacing,
  pitch?: number,
): NamedChange {
  const isFree = ({ ref }: Shift) => !isLocked(findObject(wall, ref)!);
  const shifts = spaceShifts(boxed(wall, refs), axis, spacing, pitch).filter(isFree);
  return {
    name: `Space ${nameOfSeveral(wall, refs)} equally`,
    change: (job) => shiftObjects(job, wall.id, shifts),
  };
}

export function mirrorSeveral(wall: Wall, refs: Refs, line: MirrorLine): NamedChange {
  const free = unlocked(wall, refs);
  return {
    name: `Mirror ${nameOfSeveral(wall, free)}`,
    change: (job) => changeObjects(job, wall.id, free, (object) => mirrored(job, object, line)),
  };
}

export function turnSeveral(wall: Wall, refs: Refs, about: MmPoint, quarters: number): NamedChange {
  const free = unlocked(wall, refs);
  return {
    name: `Turn ${nameOfSeveral(wall, free)}`,
    change: (job) => changeObjects(job, wall.id, free, (object) => turnedBy(job, object, about, quarters)),
  };
}

/** As their common box `from` becomes `to`. */
export function scaleSeveral(wall: Wall, refs: Refs, from: MmBox, to: MmBox): NamedChange {
  const free = unlocked(wall, refs);
  return {
    name: `Resize ${nameOfSeveral(wall, free)}`,
    change: (job) => scaleObjects(job, wall.id, free, from, to),
  };
}

/** Locked objects are neither moved, resized nor deleted. */
export function lockSeveral(wall: Wall, refs: Refs, locks: boolean): NamedChange {
  return {
    name: `${locks ? 'Lock' : 'Unlock'} ${nameOfSeveral(wall, refs)}`,
    change: (job) =>
      changeObjects(job, wall.id, refs, (object) => {
        if (isLocked(object) === locks) return object;
        const { locked: _, ...rest } = object;
        return (locks ? { ...rest, locked: true } : rest) as typeof object;
      }),
  };
}

/** What of these is locked, in a sentence; empty if nothing is. */
export function lockedWords(wall: Wall, refs: Refs): string {
  const held = refs.filter((ref) => !unlocked(wall, [ref]).length);
  if (held.length === 0) return '';
  return `${nameOfSeveral(wall, held)} ${held.length === 1 ? 'is' : 'are'} locked and stay${held.length === 1 ? 's' : ''}`;
}

export function boxed(wall: Wall, refs: Refs): Boxed[] {
  return refs.flatMap((ref) => {
    const object = findObject(wall, ref);
    return object ? [{ ref, box: extentOf(object) }] : [];
  });
}

function kindOf(wall: Wall | undefined, ref: ObjectRef): string | null {
  const object = wall && findObject(wall, ref);
  if (!object) return null;
  if (ref.kind === 'hung') return hungKindInWords((object as HungItem).kind);
  return ref.kind === 'zone' ? 'zone' : kindName((object as Opening | Fitting).kind, ref.kind);
}

function pluralOf(kind: string): string {
  return /(ch|sh|s|x)$/.test(kind) ? `${kind}es` : `${kind}s`;
}
