import type { Box, Point } from '../geometry/polygon';
import type { Start } from '../job/schema';
import { toHundredth } from '../units';
import type { Pattern } from './grid';

/** Every start that names a point by itself. */
export type FixedStart = Exclude<Start, 'best'>;

/**
 * The lower left corner of the panel cell that a start asks for.
 *
 * @param box bounding box of the zone as drawn, wall frame, hundredths
 * @returns for a corner: the cell that has that corner of its own on that corner of the box; for a centre: the
 *   cell right of and above the joint in the middle, or the cell in the middle. Where the middle falls on half
 *   a hundredth, the next hundredth to the right and upwards.
 * @example startPoint('upper-right', box of 2000 × 1000 mm, pattern of 500 × 500 mm) // (1500, 500) mm
 */
export function startPoint(start: FixedStart, box: Box, pattern: Pattern): Point {
  if (typeof start !== 'string') return { x: toHundredth(start.x), y: toHundredth(start.y) };
  const { width, height, pitchX, pitchY } = pattern;
  const x = {
    first: box.left,
    last: box.right - width,
    joint: Math.round((box.left + box.right + (pitchX - width)) / 2),
    panel: Math.round((box.left + box.right - width) / 2),
  };
  const y = {
    first: box.bottom,
    last: box.top - height,
    joint: Math.round((box.bottom + box.top + (pitchY - height)) / 2),
    panel: Math.round((box.bottom + box.top - height) / 2),
  };
  switch (start) {
    case 'lower-left':
      return { x: x.first, y: y.first };
    case 'lower-right':
      return { x: x.last, y: y.first };
    case 'upper-left':
      return { x: x.first, y: y.last };
    case 'upper-right':
      return { x: x.last, y: y.last };
    case 'centre-on-joint':
      return { x: x.joint, y: y.joint };
    case 'centre-on-panel':
      return { x: x.panel, y: y.panel };
  }
}
