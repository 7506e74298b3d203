import { findWall } from '../../../core/job/shape';
import { hitsAt } from '../hit';
import type { Hand } from '../hand.svelte';
import type { HandEvent } from './gesture';
import { chosenObject } from './what-can-change';

/** What lies under the hand gives the edge that a distance is taken from; beside everything, the wall's outline does. */
export function pickEdge(hand: Hand, { at, touch }: HandEvent): void {
  const { open } = hand;
  // The zone that is only shown is no edge to go by.
  const wall = findWall(open.startJob, open.wall?.id ?? '');
  if (!wall) return;
  const hits = hitsAt(wall, at, (touch ? 12 : 4) / hand.view.frame.scale, open.station);
  hand.offsetOf = hits.map(chosenObject).find((ref) => ref !== null) ?? null;
}
