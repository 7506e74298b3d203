import type { Box } from '../geometry/polygon';
import type { Hundredth } from '../units';
import { coursesIn, modulo, shiftOf, type Grid } from './grid';

/**
 * How far the joints are from lying alike on both sides of the vertical middle of a box: the shift that would
 * put the mirrored joints of a course on the joints, for the worst course. 0 is symmetric; half a pitch is the
 * most.
 *
 * @param box the zone's, wall frame, hundredths
 */
export function asymmetryOf(grid: Grid, box: Box): Hundredth {
  const { first, last } = coursesIn(grid, box);
  if (grid.stagger === 0) return offMirror(grid, grid.start.x, box);
  let worst = 0;
  for (let course = first; course <= last; course++) {
    worst = Math.max(worst, offMirror(grid, grid.start.x + shiftOf(grid, course), box));
  }
  return worst;
}

/** A cell's left edge and the left edge of its mirror image, modulo the pitch. */
function offMirror({ width, pitchX }: Grid, left: Hundredth, box: Box): Hundredth {
  const off = modulo(box.left + box.right - (left + width) - left, pitchX);
  return Math.min(off, pitchX - off);
}
