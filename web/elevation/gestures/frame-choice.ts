import type { ObjectRef } from '../../../core/job/shape';
import { within } from '../../arrange/choose-alike';
import type { Hand } from '../hand.svelte';
import { chooseSeveral } from './choose';
import type { Gesture, HandEvent } from './gesture';

/** A frame from corner to corner chooses what lies wholly in it, beside what is chosen already. */
export function frameChoice(hand: Hand, start: HandEvent): Gesture | null {
  if (!hand.wall) return null;
  const { chosen } = hand.open;
  const before = chosen.refs;
  const choose = (refs: readonly ObjectRef[]) => {
    chosen.set(before);
    chosen.add(refs);
  };
  return {
    move(event) {
      const [x, y] = [Math.min(start.at.x, event.at.x), Math.min(start.at.y, event.at.y)];
      const width = Math.abs(event.at.x - start.at.x);
      const height = Math.abs(event.at.y - start.at.y);
      hand.framing = { x, y, width, height };
      choose(within(hand.open, hand.framing));
    },
    end() {
      hand.letGo();
      chooseSeveral(hand, chosen.refs);
    },
    cancel() {
      hand.letGo();
      chosen.set(before);
    },
  };
}
