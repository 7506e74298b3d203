import type { Point, Polygon } from '../geometry/polygon';
import type { SurveyLine } from '../job/schema';
import { toHundredth } from '../units';
import type { MovementJoint } from './surveyed-wall';

/**
 * A movement joint as no panel may bridge it: a strip as wide as the joint, half of it on either side of the line.
 *
 * Halves are rounded up to whole hundredths and never less than one, so that panels part even at a joint without
 * a width. The strip of a level or upright line is exact, the corners of another are rounded to the nearest.
 */
export function movementJointOf({ id, from, to, width = 0 }: SurveyLine): MovementJoint {
  const a = { x: toHundredth(from[0]), y: toHundredth(from[1]) };
  const b = { x: toHundredth(to[0]), y: toHundredth(to[1]) };
  return { id, from: a, to: b, strip: stripAbout(a, b, Math.max(1, Math.ceil(width * 50 - 1e-6))) };
}

function stripAbout(a: Point, b: Point, half: number): Polygon {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  // To the left of the way from a to b.
  const x = Math.round(((a.y - b.y) / length) * half) + 0;
  const y = Math.round(((b.x - a.x) / length) * half) + 0;
  const outer = [
    { x: a.x - x, y: a.y - y },
    { x: b.x - x, y: b.y - y },
    { x: b.x + x, y: b.y + y },
    { x: a.x + x, y: a.y + y },
  ];
  return { outer, holes: [] };
}
