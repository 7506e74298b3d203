import type { HandEvent } from './gesture';

/** How far a hand has gone, mm. Shift keeps to the direction in which it went further. */
export function travel(start: HandEvent, event: HandEvent): { dx: number; dy: number } {
  const dx = event.at.x - start.at.x;
  const dy = event.at.y - start.at.y;
  if (!event.straight) return { dx, dy };
  return Math.abs(dx) >= Math.abs(dy) ? { dx, dy: 0 } : { dx: 0, dy };
}
