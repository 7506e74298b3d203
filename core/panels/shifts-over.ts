import type { Hundredth } from '../units';
import type { ZoneArea } from '../zones/zone-area';
import { shiftOf, type Pattern } from './grid';
import { coursesOver } from './start-meter';

/** By how much the courses that may lie over a zone are shifted, each once; 0 alone without stagger. */
export function shiftsOver({ box }: ZoneArea, pattern: Pattern): Hundredth[] {
  if (pattern.stagger === 0) return [0];
  const courses = coursesOver(box, pattern);
  return [...new Set(Array.from({ length: courses }, (_, course) => shiftOf(pattern, course)))];
}
