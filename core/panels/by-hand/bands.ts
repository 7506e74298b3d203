import type { Box } from '../../geometry/polygon';
import type { Hundredth } from '../../units';
import type { JointPlace } from '../near-joints';
import type { JointRun, SeamAxis } from '../seams';
import type { Band } from './hand-wishes';

/**
 * Whether a joint lies in a band: some of its strip strictly within. An upright strip forbids upright joints alone, as
 * level ones must cross it; so does a level strip level ones.
 */
export function liesInBand({ axis, at, gap, from, to }: JointRun, band: Band): boolean {
  const { low, high, lower, upper } = acrossBand(axis, band);
  return (
    low !== null &&
    high !== null &&
    at < high &&
    at + gap > low &&
    (upper ?? Infinity) > from &&
    (lower ?? -Infinity) < to
  );
}

/** A band as the count of joints looks at it; null where it forbids none of this direction. */
export function bandPlace(axis: SeamAxis, gap: Hundredth, band: Band, box: Box): JointPlace | null {
  const { low, high, lower, upper } = acrossBand(axis, band);
  if (low === null || high === null) return null;
  return {
    low: low - gap + 1,
    high: high - 1,
    from: Math.max(lower ?? -Infinity, axis === 'x' ? box.bottom : box.left),
    to: Math.min(upper ?? Infinity, axis === 'x' ? box.top : box.right),
    isNear: (seam) => liesInBand(seam, band),
    limits: [low - gap, high],
  };
}

function acrossBand(axis: SeamAxis, { left, right, bottom, top }: Band) {
  return axis === 'x'
    ? { low: left, high: right, lower: bottom, upper: top }
    : { low: bottom, high: top, lower: left, upper: right };
}
