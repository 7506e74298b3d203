import { boxOfObject, findObject, type MmBox, type ObjectRef, type Placed } from '../../../core/job/shape';
import { stretchTo } from '../../job/changes/objects';
import type { Hand } from '../hand.svelte';
import { partsOfBox, snap, type SnapPart } from '../snap';
import { snapLines } from '../snap-lines';
import type { Gesture, HandEvent } from './gesture';
import { resizedBox, type Handle } from './resized-box';

/** Pulls edges of an object by a handle; the opposite edges stay. Round things stay round. */
export function resizeObject(hand: Hand, start: HandEvent, ref: ObjectRef, handle: Handle): Gesture | null {
  const { wall } = hand;
  const object = wall && findObject(wall, ref);
  if (!wall || !object) return null;
  const box = boxOfObject(object);
  const round = (object as Placed).circle !== undefined;
  const lines = snapLines(wall, ref, hand.panels);
  let name = '';
  hand.lift(ref, wall, { sized: true });

  return {
    move(event) {
      const dx = Math.round(event.at.x - start.at.x);
      const dy = Math.round(event.at.y - start.at.y);
      const free = resizedBox(box, handle, dx, dy);
      const { by, guides } = snap(movingParts(free, handle), lines, round ? -1 : hand.snapReachOf(event));
      hand.guide(guides);
      const to = resizedBox(box, handle, dx + by.x, dy + by.y, round || event.straight);
      const stretch = stretchTo(wall, ref, to);
      name = stretch.name;
      hand.open.preview(stretch.change);
    },
    end() {
      hand.commit(name);
    },
    cancel() {
      hand.cancel();
    },
  };
}

function movingParts(box: MmBox, handle: Handle): SnapPart[] {
  const words = [
    handle.x < 0 ? 'left edge' : handle.x > 0 ? 'right edge' : '',
    handle.y < 0 ? 'lower edge' : handle.y > 0 ? 'upper edge' : '',
  ];
  return partsOfBox(box).filter((part) => words.includes(part.words));
}
