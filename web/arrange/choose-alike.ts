import { extentOf } from '../../core/job/extent';
import { allObjects, sameObject } from '../../core/job/several';
import type { Fitting, Opening, Wall } from '../../core/job/schema';
import { findObject, type MmBox, type ObjectRef } from '../../core/job/shape';
import type { OpenJob } from '../job/open-job.svelte';

/*
 * Which objects are chosen together. What was chosen first stays first, as the others are aligned to it. Zones are chosen
 * where they can be seen to be: not at Survey; hung items at Hanging, and there nothing else.
 */

type Choice = Pick<OpenJob, 'wall' | 'chosen' | 'station'>;

/** Heights that differ by no more than this are one row, mm: what a levelled box may be off (common practice, no source). */
const sameHeight = 20;

export function everything({ wall, chosen, station }: Choice): ObjectRef[] {
  return firstFirst(chosen.refs[0], wall ? choosable(wall, station) : []);
}

/** All of the kind of the one chosen first. */
export function sameKind({ wall, chosen }: Choice): ObjectRef[] {
  const [first] = chosen.refs;
  if (!wall || !first) return [];
  const alike = allObjects(wall).filter((ref) => kindOf(wall, ref) === kindOf(wall, first));
  return firstFirst(first, alike);
}

/** All whose middles or feet stand about as high as those of the one chosen first. */
export function sameRow({ wall, chosen, station }: Choice): ObjectRef[] {
  const [first] = chosen.refs;
  const object = wall && first && findObject(wall, first);
  if (!wall || !object) return [];
  const row = extentOf(object);
  const isInRow = ({ y, height }: MmBox) =>
    Math.abs(y - row.y) <= sameHeight || Math.abs(y + height / 2 - row.y - row.height / 2) <= sameHeight;
  const beside = choosable(wall, station).filter((ref) => isInRow(extentOf(findObject(wall, ref)!)));
  return firstFirst(first, beside);
}

/** All that lies wholly in a box, in the order of the wall's lists. */
export function within({ wall, station }: Choice, frame: MmBox): ObjectRef[] {
  if (!wall) return [];
  return choosable(wall, station).filter((ref) => {
    const { x, y, width, height } = extentOf(findObject(wall, ref)!);
    const isAcross = x >= frame.x && x + width <= frame.x + frame.width;
    return isAcross && y >= frame.y && y + height <= frame.y + frame.height;
  });
}

function choosable(wall: Wall, station: OpenJob['station']): ObjectRef[] {
  return allObjects(wall).filter(({ kind }) => {
    if (kind === 'hung' || station === 'hanging') return kind === 'hung' && station === 'hanging';
    return kind !== 'zone' || station !== 'survey';
  });
}

export function firstFirst(first: ObjectRef | undefined, refs: readonly ObjectRef[]): ObjectRef[] {
  return first ? [first, ...refs.filter((ref) => !sameObject(ref, first))] : [...refs];
}

function kindOf(wall: Wall, ref: ObjectRef): string {
  const object = findObject(wall, ref);
  return ref.kind === 'zone' ? 'zone' : `${ref.kind} ${(object as Opening | Fitting | undefined)?.kind}`;
}
