import type { Box, Point } from '../geometry/polygon';
import type { FixingPoint } from '../job/ground-schema';
import { toHundredth } from '../units';

/** Hundredths, wall frame; of a hole the box about its circle. */
export function boxOfFixingPoint({ kind, x, y, width, height = width }: FixingPoint): Box {
  const [left, bottom] = kind === 'hole' ? [x - width / 2, y - width / 2] : [x, y];
  return {
    left: toHundredth(left),
    bottom: toHundredth(bottom),
    right: toHundredth(left + width),
    top: toHundredth(bottom + (kind === 'hole' ? width : height)),
  };
}

export function middleOfFixingPoint(point: FixingPoint): Point {
  if (point.kind === 'hole') return { x: toHundredth(point.x), y: toHundredth(point.y) };
  const { left, bottom, right, top } = boxOfFixingPoint(point);
  return { x: Math.round((left + right) / 2), y: Math.round((bottom + top) / 2) };
}
