import { titleOfWall } from '../../job/changes/names';
import type { Hand } from '../hand.svelte';
import { hitsAt, nextHit } from '../hit';
import { chooseObject } from './choose';
import type { HandEvent } from './gesture';

/** A tap on another wall of the room: that wall is the one on the screen now, and what lies there is chosen. */
export function goToNeighbour(hand: Hand, { at, touch }: HandEvent): void {
  const place = hand.room.neighbourAt(at);
  if (!place) return;
  const { wall, dx, dy } = place;
  const { open, view } = hand;
  const point = { x: at.x - dx, y: at.y - dy };
  const tolerance = (touch ? 12 : 4) / view.frame.scale;
  const hit = nextHit(hitsAt(wall, point, tolerance, open.station, hand.room.panelsOf(wall.id)), null);
  open.showWall(wall.id);
  if (hit) chooseObject(hand, hit);
  else hand.said = titleOfWall(wall);
}
