import type { Point } from '../geometry/polygon';
import type { Hundredth } from '../units';
import { modulo, shiftOf, type Pattern } from './grid';
import { meetLevel, meetUpright, type Meeting, type SlopingChain } from './sloping-chains';
import type { StartQuestion } from './start-figures';
import { coursesOver } from './start-meter';

/*
 * Where an edge slopes, what a start does to the panels changes neither at one x nor at one y, but where the edge
 * passes a corner of a cell: along a slope in the plane of all starts.
 *
 *       ╲ ┌────────────┐      A cell is whole until the edge passes its far corner, and gone once it passes the
 *        ╲│            │      near one. A panel under a shallow edge is a sliver unless the edge passes its lower
 *         ╲            │      end the least width above the level joint, and one beside a steep edge likewise.
 *         │╲           │
 */

/** A place in a cell, counted from its lower left corner, that a chain passes at an event. */
export interface CellPlace {
  readonly x: Hundredth;
  readonly y: Hundredth;
  /** Edges that count. */
  readonly where: (edge: Meeting) => boolean;
}

/** The y of starts, modulo the pitch, for which a chain passes the corner of some cell, where x is given. */
export function cornerStartsAtX(
  { area, pattern, leastWidth }: StartQuestion,
  chain: SlopingChain,
  x: Hundredth,
): Hundredth[] {
  const { bottom } = area.box;
  const { pitchX, pitchY } = pattern;
  const [first, last] = [chain.points[0]!.x, chain.points.at(-1)!.x];
  const found = new Set<Hundredth>();
  for (const place of placesOf(chain, pattern, leastWidth)) {
    for (const shift of shiftsOf(area.box, pattern)) {
      const origin = x + shift + place.x;
      for (let at = first + modulo(origin - first, pitchX); at <= last; at += pitchX) {
        const meeting = meetUpright(chain, at);
        if (!meeting || !place.where(meeting)) continue;
        const y = meeting.at - place.y;
        // Course 0 begins at most a pitch below the box.
        if (shiftOf(pattern, Math.ceil((y - bottom) / pitchY)) === shift) found.add(modulo(y, pitchY));
      }
    }
  }
  return [...found];
}

/** The x of starts, modulo the pitch, for which a chain passes the corner of some cell, where y is given. */
export function cornerStartsAtY(
  { area, pattern, leastWidth }: StartQuestion,
  chain: SlopingChain,
  y: Hundredth,
): Hundredth[] {
  const { bottom } = area.box;
  const { pitchX, pitchY } = pattern;
  const lowest = bottom - modulo(bottom - y, pitchY);
  const courses = coursesOver(area.box, pattern);
  const found = new Set<Hundredth>();
  for (const place of placesOf(chain, pattern, leastWidth)) {
    for (let course = 0; course < courses; course++) {
      const meeting = meetLevel(chain, lowest + course * pitchY + place.y);
      if (!meeting || !place.where(meeting)) continue;
      found.add(modulo(meeting.at - place.x - shiftOf(pattern, course), pitchX));
    }
  }
  return [...found];
}

export function placesOf(
  { facesRight, facesUp }: SlopingChain,
  { width, height }: Pattern,
  least: Hundredth,
): CellPlace[] {
  const far: Point = { x: facesRight ? width : 0, y: facesUp ? height : 0 };
  const near: Point = { x: width - far.x, y: height - far.y };
  const places: CellPlace[] = [
    { ...far, where: () => true },
    { ...near, where: () => true },
  ];
  const level = { x: far.x, y: facesUp ? least : height - least, where: isShallow };
  const upright = { x: facesRight ? least : width - least, y: far.y, where: isSteep };
  if (least > 0 && least < height) places.push(level);
  if (least > 0 && least < width) places.push(upright);
  return places;
}

/** Within 30° of level: what makes slivers together with a level joint. */
function isShallow({ a, b }: Meeting): boolean {
  return Math.abs(b.x - a.x) >= Math.sqrt(3) * Math.abs(b.y - a.y) - 1;
}

function isSteep({ a, b }: Meeting): boolean {
  return Math.abs(b.y - a.y) >= Math.sqrt(3) * Math.abs(b.x - a.x) - 1;
}

function shiftsOf(box: StartQuestion['area']['box'], pattern: Pattern): Set<Hundredth> {
  const shifts = new Set<Hundredth>();
  const courses = pattern.stagger === 0 ? 1 : coursesOver(box, pattern);
  for (let course = 0; course < courses; course++) shifts.add(shiftOf(pattern, course));
  return shifts;
}
