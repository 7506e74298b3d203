import type { MmBox } from '../../core/job/shape';
import { fitFrame, panned, zoomedAt, type Frame, type ScreenPoint } from './frame';

/** px beside a fitted wall for handles, and below it for the floor line. */
const margin = { left: 28, right: 28, bottom: 18 };

/** How much of the wall is seen. Until a hand has panned or zoomed, the whole wall stays fitted. */
export class View {
  frame = $state.raw<Frame>({ scale: 0.1, originX: 0, originY: 0, width: 0, height: 0 });
  /** Whether the whole wall is shown as "Fit" would. */
  fitted = $state.raw(true);

  /** @param above px kept free above a fitted wall */
  resize(width: number, height: number, box: MmBox, above: number): void {
    if (this.fitted || this.frame.width === 0) return this.fit(box, above, width, height);
    const dx = (width - this.frame.width) / 2;
    const dy = (height - this.frame.height) / 2;
    this.frame = { ...panned(this.frame, dx, dy), width, height };
  }

  fit(box: MmBox, above: number, width = this.frame.width, height = this.frame.height): void {
    this.frame = fitFrame(box, width, height, { ...margin, top: above });
    this.fitted = true;
  }

  /** Another datum for what is seen: nothing moves on the screen, and what was fitted is so still. */
  shift(dx: number, dy: number): void {
    this.frame = panned(this.frame, dx, dy);
  }

  panBy(dx: number, dy: number): void {
    this.frame = panned(this.frame, dx, dy);
    this.fitted = false;
  }

  zoomAt(at: ScreenPoint, factor: number): void {
    this.frame = zoomedAt(this.frame, at, factor);
    this.fitted = false;
  }

  /** Zoom about the middle, as the two buttons do. */
  zoom(factor: number): void {
    this.zoomAt({ px: this.frame.width / 2, py: this.frame.height / 2 }, factor);
  }
}
