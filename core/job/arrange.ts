import { tidy } from './changes';
import type { Shift } from './several';
import type { MmBox, ObjectRef } from './shape';

/** An object and the least box about it. */
export interface Boxed {
  readonly ref: ObjectRef;
  readonly box: MmBox;
}

/** The part of each box that is brought to one line. */
export type AlignedPart = 'left' | 'right' | 'foot' | 'top' | 'upright middle' | 'level middle';

/** Where a part of a box is: an x for left, right and the upright middle, else a y. */
export function placeOfPart({ x, y, width, height }: MmBox, part: AlignedPart): number {
  switch (part) {
    case 'left':
      return x;
    case 'right':
      return x + width;
    case 'upright middle':
      return x + width / 2;
    case 'foot':
      return y;
    case 'top':
      return y + height;
    case 'level middle':
      return y + height / 2;
  }
}

export function isAcross(part: AlignedPart): boolean {
  return part === 'left' || part === 'right' || part === 'upright middle';
}

/** How far each goes so that this part of all of them lies at one place. */
export function alignShifts(objects: readonly Boxed[], part: AlignedPart, place: number): Shift[] {
  return objects.map(({ ref, box }) => {
    const by = tidy(place - placeOfPart(box, part));
    return isAcross(part) ? { ref, dx: by, dy: 0 } : { ref, dx: 0, dy: by };
  });
}

/** What is made equal between neighbours: the free length between them, or from middle to middle. */
export type Spacing = 'gaps' | 'middles';

/**
 * How far each goes so that along an axis all gaps, or all distances from middle to middle, are equal. The first stays,
 * and without a pitch the last one too; their order, by their middles, stays. Gaps are less than nothing where the
 * objects are wider together than the length they share.
 *
 * @param pitch mm; the gap or the distance from middle to middle, as typed
 * @returns a shift for each object, in the order along the axis; none for fewer than two, or three without a pitch
 */
export function spaceShifts(
  objects: readonly Boxed[],
  axis: 'x' | 'y',
  spacing: Spacing,
  pitch?: number,
): Shift[] {
  const along = objects
    .map(({ ref, box }) =>
      axis === 'x' ? { ref, at: box.x, size: box.width } : { ref, at: box.y, size: box.height },
    )
    .sort((a, b) => a.at + a.size / 2 - (b.at + b.size / 2));
  const [first, last] = [along[0], along.at(-1)];
  if (!first || !last || along.length < (pitch === undefined ? 3 : 2)) return [];
  const step = pitch ?? equalStep(along, spacing);
  let next = first.at;
  return along.map(({ ref, at, size }, i) => {
    const middle = first.at + first.size / 2 + i * step;
    const keeps = i === 0 || (pitch === undefined && i === along.length - 1);
    const by = keeps ? 0 : tidy((spacing === 'middles' ? middle - size / 2 : next) - at);
    next += size + step;
    return axis === 'x' ? { ref, dx: by, dy: 0 } : { ref, dx: 0, dy: by };
  });
}

function equalStep(along: readonly { at: number; size: number }[], spacing: Spacing): number {
  const [first, last] = [along[0]!, along.at(-1)!];
  const steps = along.length - 1;
  if (spacing === 'middles') return (last.at + last.size / 2 - (first.at + first.size / 2)) / steps;
  const filled = along.reduce((sum, { size }) => sum + size, 0);
  return (last.at + last.size - first.at - filled) / steps;
}

/**
 * How often a box can be repeated by a step until it would leave the room, itself not counted.
 *
 * @param fits whether the box is wholly within the room when moved
 */
export function timesThatFit(
  { dx, dy }: { dx: number; dy: number },
  fits: (dx: number, dy: number) => boolean,
  most: number,
): number {
  if (dx === 0 && dy === 0) return 0;
  let times = 0;
  while (times < most && fits(tidy(dx * (times + 1)), tidy(dy * (times + 1)))) times++;
  return times;
}
