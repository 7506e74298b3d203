import type { Pin } from '../../../core/job/schema';
import { setPin } from '../../job/changes/photos';
import type { Hand } from '../hand.svelte';
import { pinAt } from '../layers/pins-drawing';
import type { Gesture, HandEvent } from './gesture';

export function pinUnderHand(hand: Hand, start: HandEvent): Pin | undefined {
  const pins = hand.open.station === 'survey' ? hand.wall?.pins : undefined;
  return pins && pinAt(hand.view.frame, pins, start, start.touch);
}

/** Moves a pinned photo to another place, in whole millimetres. */
export function dragPin(hand: Hand, start: HandEvent, { id, at: [x, y] }: Pin): Gesture | null {
  const { wall, open } = hand;
  if (!wall) return null;
  const moved = ({ at }: HandEvent) =>
    setPin(wall.id, id, { at: [Math.round(x + at.x - start.at.x), Math.round(y + at.y - start.at.y)] });
  return {
    move: (event) => open.preview(moved(event).change),
    end: (event) => hand.commit(moved(event).name),
    cancel: () => hand.cancel(),
  };
}
