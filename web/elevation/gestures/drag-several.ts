import { extentOfSeveral } from '../../../core/job/extent';
import { sameObject } from '../../../core/job/several';
import type { ObjectRef } from '../../../core/job/shape';
import { copySeveral, moveSeveral } from '../../job/changes/several';
import type { Hand } from '../hand.svelte';
import { partsOfBox, snap, toWholeMm } from '../snap';
import { snapLines } from '../snap-lines';
import type { Gesture, HandEvent } from './gesture';
import { travel } from './travel';
import { changeable, copyable } from './what-can-change';

/**
 * Moves everything that is chosen with the hand, or copies of it. The box about it keeps to whole millimetres until it
 * snaps; what is locked, or is not changed at this station, stays.
 *
 * @param grip the one that the hand holds
 */
export function dragSeveral(
  hand: Hand,
  start: HandEvent,
  grip: ObjectRef,
  { copy = false } = {},
): Gesture | null {
  const { wall, open } = hand;
  const { refs, held } = copy ? copyable(open) : changeable(open);
  const box = wall && extentOfSeveral(wall, refs);
  if (!wall || !box) {
    open.chosen.say(`${held}.`);
    return null;
  }
  const { job, chosen } = open;
  const before = chosen.refs;
  const moving = copy ? copySeveral(job, wall, refs, 0, 0).copies : refs;
  const changeFor = (dx: number, dy: number) =>
    copy ? copySeveral(job, wall, refs, dx, dy) : moveSeveral(wall, refs, dx, dy);
  const first = Math.max(
    0,
    refs.findIndex((ref) => sameObject(ref, grip)),
  );
  const inOrder = [...moving.slice(first), ...moving.slice(0, first)];
  const [ref, ...along] = inOrder;
  if (copy) hand.lifted = { ref: ref!, rest: wall, along };
  else hand.lift(ref!, wall, { along });
  const lines = linesBeside(hand, moving);

  return {
    move(event) {
      const { dx, dy } = travel(start, event);
      const { x, y } = toWholeMm({ x: box.x + dx, y: box.y + dy });
      const reach = hand.snapReachOf({ ...event, alt: event.alt && !copy });
      const { by, guides } = snap(partsOfBox({ ...box, x, y }), lines, reach);
      hand.guide(guides);
      open.preview(changeFor(x - box.x + by.x, y - box.y + by.y).change);
      if (copy) chosen.set(inOrder);
    },
    end() {
      hand.commit(changeFor(0, 0).name);
      if (held && !copy) chosen.say(`${held}.`);
    },
    cancel() {
      hand.cancel();
      chosen.set(before);
    },
  };
}

/** Of all that stays on the wall; the panels of a moving zone go with it. */
function linesBeside(hand: Hand, moving: readonly ObjectRef[]) {
  const { rest } = hand.lifted!;
  const zones = moving.filter(({ kind }) => kind === 'zone').map(({ id }) => `${rest.id}-${id}-`);
  const panels = hand.panels.filter(({ mark }) => !zones.some((zone) => mark.startsWith(zone)));
  const hung = moving.find(({ kind }) => kind === 'hung');
  return snapLines(rest, hung ?? null, panels);
}
