import { isHung } from '../../../core/job/hung-places';
import { boxOfObject, findObject, type ObjectRef } from '../../../core/job/shape';
import { copyTo, moveBy } from '../../job/changes/objects';
import type { Hand } from '../hand.svelte';
import { partsOfBox, snap, toWholeMm } from '../snap';
import { snapLines } from '../snap-lines';
import { goesBySquares, snapToSquares } from '../snap-to-squares';
import type { Gesture, HandEvent } from './gesture';
import { travel } from './travel';

/** Moves an object with the hand, or a copy of it. Its lower left corner keeps to whole millimetres until it snaps. */
export function dragObject(
  hand: Hand,
  start: HandEvent,
  ref: ObjectRef,
  { copy = false } = {},
): Gesture | null {
  const { wall } = hand;
  const { job } = hand.open;
  const object = wall && findObject(wall, ref);
  if (!wall || !object) return null;
  const box = boxOfObject(object);
  const lines = snapLines(wall, copy ? null : ref, hand.panels);
  const moving = copy ? copyTo(job, wall, ref, 0, 0).copy : ref;
  const changeFor = (dx: number, dy: number) =>
    copy ? copyTo(job, wall, ref, dx, dy) : moveBy(wall, ref, dx, dy);
  const bySquares = isHung(object) && goesBySquares(object, hand.ownHungKinds());
  const before = hand.open.selection;
  if (copy) hand.lifted = { ref: moving, rest: wall };
  else hand.lift(ref, wall);

  return {
    move(event) {
      const { dx, dy } = travel(start, event);
      const { x, y } = toWholeMm({ x: box.x + dx, y: box.y + dy });
      const reach = hand.snapReachOf({ ...event, alt: event.alt && !copy });
      const at = { ...box, x, y };
      const { by, guides } =
        (bySquares && snapToSquares(wall, at, reach)) || snap(partsOfBox(at), lines, reach);
      hand.guide(guides);
      hand.open.preview(changeFor(x - box.x + by.x, y - box.y + by.y).change);
      hand.open.selection = moving;
    },
    end() {
      hand.commit(changeFor(0, 0).name);
    },
    cancel() {
      hand.cancel();
      hand.open.selection = before;
    },
  };
}
