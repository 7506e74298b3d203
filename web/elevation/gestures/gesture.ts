import type { MmPoint } from '../../../core/job/shape';
import type { ScreenPoint } from '../frame';

/** Where a hand is and how: on the screen, on the wall, and what is held down. */
export interface HandEvent extends ScreenPoint {
  /** On the wall, mm, not rounded. */
  readonly at: MmPoint;
  readonly touch: boolean;
  /** Keeps to one direction, or to equal sides. */
  readonly straight: boolean;
  /** Ctrl or ⌘: holds snapping off. */
  readonly ctrl: boolean;
  /** A drag that begins with it takes a copy; otherwise it holds snapping off, too. */
  readonly alt: boolean;
}

/** What a hand does between press and release. */
export interface Gesture {
  move(event: HandEvent): void;
  end(event: HandEvent): void;
  /** As if it had never begun. */
  cancel(): void;
}

/** Whether a press has become a drag: a finger trembles more than a mouse. */
export function hasTravelled(from: HandEvent, to: HandEvent): boolean {
  return Math.hypot(to.px - from.px, to.py - from.py) > (from.touch ? 9 : 3);
}
