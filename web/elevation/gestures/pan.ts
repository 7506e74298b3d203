import type { Hand } from '../hand.svelte';
import type { Gesture, HandEvent } from './gesture';

/** Moves the paper under the window. */
export function pan(hand: Hand, start: HandEvent): Gesture {
  let { px, py } = start;
  return {
    move(event) {
      hand.view.panBy(event.px - px, event.py - py);
      ({ px, py } = event);
    },
    end() {},
    cancel() {},
  };
}
