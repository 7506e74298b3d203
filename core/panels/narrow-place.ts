import type { Point } from '../geometry/polygon';
import type { Hundredth } from '../units';

/** A place where a panel is too narrow. */
export interface NarrowPlace {
  /** Hundredths: the shorter side of the box round the lost part. */
  readonly width: Hundredth;
  /** The middle of that box, wall frame. */
  readonly at: Point;
}

/** A lost part of up to 1 mm² makes no sliver; hundredths squared. */
export const leastLostArea = 1e4;

/** Curves are drawn to 0.02 mm: a strip so little under the least width still counts as of that width. */
export const roundingOfCurves: Hundredth = 2;
