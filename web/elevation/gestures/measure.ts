import type { MmPoint } from '../../../core/job/shape';
import { measures, measureWords } from '../../measure/measures.svelte';
import { pointNear } from '../../measure/snap-point';
import type { Hand } from '../hand.svelte';
import { partsOfPoint, snap, toWholeMm } from '../snap';
import { snapLines } from '../snap-lines';
import type { HandEvent } from './gesture';

/** Where the next end of a measure would be: at a corner, middle or edge, else in line with what is near. */
export function aimMeasure(hand: Hand, event: HandEvent): MmPoint {
  const reach = hand.snapReachOf(event);
  const near = hand.wall && pointNear(hand.wall, event.at, reach);
  if (near) {
    hand.guides = [];
    hand.said = near.words;
    return (measures.aim = { x: near.x, y: near.y });
  }
  const at = toWholeMm(event.at);
  const { by, guides } = snap(
    partsOfPoint(at),
    hand.wall ? snapLines(hand.wall, null, hand.panels) : [],
    reach,
  );
  hand.guide(guides);
  return (measures.aim = { x: at.x + by.x, y: at.y + by.y });
}

/** The first tap sets where a measure begins, the second where it ends. */
export function setMeasure(hand: Hand, event: HandEvent): void {
  const { wall } = hand;
  if (!wall) return;
  const at = aimMeasure(hand, event);
  const { from } = measures;
  if (!from) {
    measures.from = at;
    hand.said = 'Measured from here';
    return;
  }
  measures.take({ wallId: wall.id, from, to: at });
  measures.from = null;
  hand.said = measureWords({ from, to: at });
}
