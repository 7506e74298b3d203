import { hitsAt } from '../hit';
import type { Hand } from '../hand.svelte';
import { chooseObject } from './choose';
import { chooseFixingPoint, fixingPointAt } from './fixing-points';
import { hasTravelled, type HandEvent } from './gesture';

/** ms that a finger rests before it means more than a tap; common in touch interfaces, no source. */
const patience = 550;

/**
 * Watches for a finger or pen that rests on an object: it chooses that and calls `onrest`. While corners are set or
 * something is put in, a resting finger means nothing.
 */
export function watchLongPress(hand: Hand, onrest: () => void) {
  let start: HandEvent | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const stop = () => {
    clearTimeout(timer);
    start = null;
  };

  const rest = () => {
    const { wall, open } = hand;
    const at = start;
    stop();
    if (!at || !wall || hand.tool.kind !== 'choose') return;
    const [hit] = hitsAt(wall, at.at, 12 / hand.view.frame.scale, open.station, hand.panels);
    const point = hit ? undefined : fixingPointAt(hand, at);
    if (!hit && !point) return;
    if (point) chooseFixingPoint(hand, point);
    else if (hit) chooseObject(hand, hit);
    swallowNextClick();
    onrest();
  };

  return {
    begin(event: HandEvent) {
      stop();
      start = event;
      timer = setTimeout(rest, patience);
    },
    move(event: HandEvent) {
      if (start && hasTravelled(start, event)) stop();
    },
    stop,
  };
}

/** The click that ends a long press would fall on whatever has come under the finger in the meantime. */
function swallowNextClick(): void {
  const over = new AbortController();
  const options = { capture: true, signal: over.signal };
  const swallow = (event: Event) => {
    event.preventDefault();
    event.stopPropagation();
    over.abort();
  };
  addEventListener('click', swallow, options);
  addEventListener('pointerdown', () => over.abort(), options);
}
