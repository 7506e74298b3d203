import { endsOf, wallAfter, wallBefore } from '../../../core/job/corners';
import { runRoundCorner } from '../../../core/job/run-round-corner';
import type { Wall } from '../../../core/job/schema';
import { leadRoundCorner } from '../../job/changes/corners';
import type { NamedChange } from '../../job/changes/named-change';
import type { Hand } from '../hand.svelte';
import type { HandEvent } from './gesture';
import type { Handle } from './resized-box';

/** So far past the corner a hand means the next wall, px. */
const past = 12;

/**
 * A zone's side pulled past the end of its wall, where the room is shown: it runs round the corner as far as the hand is.
 *
 * @param wall as it was before the gesture
 * @returns null where the hand is still on the wall, no wall is met there, or the zone goes on there already
 */
export function pulledRound(
  hand: Hand,
  wall: Wall,
  zoneId: string,
  handle: Handle,
  { at }: HandEvent,
): NamedChange | null {
  if (!hand.room.strip || handle.x === 0 || handle.y !== 0) return null;
  const side = handle.x > 0 ? 'right' : 'left';
  const { left, right } = endsOf(wall);
  const beyond = side === 'right' ? at.x - right : left - at.x;
  if (beyond * hand.view.frame.scale < past) return null;
  const { job } = hand.open;
  if (!(side === 'right' ? wallAfter(job, wall) : wallBefore(job, wall))) return null;
  const length = Math.max(1, Math.round(beyond));
  const start = hand.open.startJob;
  if ('fault' in runRoundCorner(start, wall.id, zoneId, side, length)) return null;
  return leadRoundCorner(wall.id, zoneId, side, length);
}
