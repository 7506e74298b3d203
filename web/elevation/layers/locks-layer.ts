import type { WallObject } from '../../../core/job/shape';
import { boxOf } from '../../../core/geometry/polygon';

import { isLocked } from '../../../core/job/several';
import { polygonOf } from '../rings';
import { inks, screenBox, type Pen } from './pen';

/** A padlock at the upper right corner of everything that is locked; the schedule says it in a word. */
export function paintLocks(pen: Pen, objects: readonly WallObject[]): void {
  for (const object of objects.filter(isLocked)) {
    const { x, y, width } = screenBox(pen.frame, boxOf(polygonOf(object).outer));
    paintPadlock(pen, x + width - 6, y - 3);
  }
}

/** 10 px wide, its body's upper left corner at (x, y). */
function paintPadlock({ context }: Pen, x: number, y: number): void {
  context.beginPath();
  context.arc(x + 5, y, 3.2, Math.PI, 0);
  context.strokeStyle = inks.paper;
  context.lineWidth = 4;
  context.stroke();
  context.strokeStyle = inks.ink;
  context.lineWidth = 1.6;
  context.stroke();
  context.fillStyle = inks.ink;
  context.fillRect(x, y, 10, 8);
  context.strokeStyle = inks.paper;
  context.lineWidth = 1;
  context.strokeRect(x - 0.5, y - 0.5, 11, 9);
}
