import type { Point } from '../geometry/polygon';
import type { Hundredth } from '../units';
import { modulo, shiftOf, type Pattern } from './grid';

/** The corner of a cell of the grid from a start that lies nearest to a point. */
export function cornerNear(start: Point, to: Point, pattern: Pattern): Point {
  const course = Math.round((to.y - start.y) / pattern.pitchY);
  const first = start.x + shiftOf(pattern, course);
  const column = Math.round((to.x - first) / pattern.pitchX);
  return { x: first + column * pattern.pitchX, y: start.y + course * pattern.pitchY };
}

/** The corner of a cell that stands for a start where the start itself lies outside a box: in it, if any does. */
export function cornerInside(
  start: Point,
  box: { left: Hundredth; bottom: Hundredth; right: Hundredth; top: Hundredth },
  pattern: Pattern,
): Point {
  const { left, bottom, right, top } = box;
  if (start.x >= left && start.x < right && start.y >= bottom && start.y < top) return start;
  const course = Math.ceil((bottom - start.y) / pattern.pitchY);
  const y = start.y + course * pattern.pitchY;
  const at = y < top ? { course, y } : { course: course - 1, y: y - pattern.pitchY };
  const first = start.x + shiftOf(pattern, at.course);
  const x = left + modulo(first - left, pattern.pitchX);
  return { x: x < right ? x : x - pattern.pitchX, y: at.y };
}

/** Of coordinates that are known modulo a pitch, the one nearest to a place; null if there are none. */
export function nearestOf(
  events: readonly Hundredth[],
  to: Hundredth,
  pitch: Hundredth,
  shift: Hundredth,
): Hundredth | null {
  let best: Hundredth | null = null;
  for (const event of events) {
    const at = event + shift + Math.round((to - event - shift) / pitch) * pitch;
    if (best === null || Math.abs(at - to) < Math.abs(best - to)) best = at;
  }
  return best;
}

/** By how much the course that begins at a height is shifted against the lowest over a zone that begins at `bottom`. */
export function shiftAtHeight(y: Hundredth, bottom: Hundredth, pattern: Pattern): Hundredth {
  const lowest = bottom - modulo(bottom - y, pattern.pitchY);
  return shiftOf(pattern, Math.round((y - lowest) / pattern.pitchY));
}
