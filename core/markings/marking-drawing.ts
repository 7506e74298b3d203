import type { Box, Point } from '../geometry/polygon';
import type { Hundredth } from '../units';

/** A straight line of a marking, upright or level; `from` is its left or lower end. */
export interface MarkedLine {
  readonly from: Point;
  readonly to: Point;
}

/** Words in the middle of a cell. */
export interface MarkedText {
  readonly text: string;
  readonly cell: Box;
  /** Of a capital. */
  readonly height: Hundredth;
}

/** What a marking puts on the wall, hundredths, wall frame. Lines are where they are measured: in their middle. */
export interface MarkingDrawing {
  readonly box: Box;
  readonly lines: readonly MarkedLine[];
  /** Squares that are filled. */
  readonly filled: readonly Box[];
  readonly texts: readonly MarkedText[];
  /** Id of the photo that fills the box. */
  readonly picture: string | null;
  readonly lineWidth: Hundredth;
}
