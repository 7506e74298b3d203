import type { FixingPoint } from '../../../core/job/ground-schema';
import { putInFixingPoint } from '../../job/changes/ground';
import type { Hand } from '../hand.svelte';
import { partsOfPoint, snap, toWholeMm } from '../snap';
import { snapLines } from '../snap-lines';
import { choose } from '../tool';
import type { HandEvent } from './gesture';

/** Puts a fixing point where the hand is, in line with what is near, and shows its row. */
export function markFixingPoint(hand: Hand, kind: FixingPoint['kind'], event: HandEvent): void {
  const { wall } = hand;
  if (!wall) return;
  const at = toWholeMm(event.at);
  const { by } = snap(partsOfPoint(at), snapLines(wall, null, hand.panels), hand.snapReachOf(event));
  hand.takeUp(choose);
  if (hand.make(putInFixingPoint(wall, kind, { x: at.x + by.x, y: at.y + by.y }))) {
    hand.open.showLeaf('survey', 'Fixing points');
  }
}

/** In the middle of the wall, as Enter does. */
export function markInMiddle(hand: Hand, kind: FixingPoint['kind']): boolean {
  const { wall } = hand;
  if (!wall) return false;
  hand.takeUp(choose);
  if (hand.make(putInFixingPoint(wall, kind))) hand.open.showLeaf('survey', 'Fixing points');
  return true;
}
