import type { OpenLeaf } from '../../../core/survey/open-leaf';
import { acrossOf, downOf, inks, screenBox, strokeLine, type Pen } from './pen';

/** Where open doors lie against the wall: the leaf dashed, and a small cross where its handle touches. */
export function paintLeaves(pen: Pen, leaves: readonly OpenLeaf[]): void {
  for (const { box, handle } of leaves) {
    const { x, y, width, height } = screenBox(pen.frame, box);
    const { context } = pen;
    context.save();
    context.strokeStyle = inks.soft;
    context.lineWidth = 1.2;
    context.setLineDash([9, 5]);
    context.strokeRect(x, y, width, height);
    context.restore();
    if (handle) paintCross(pen, (handle.left + handle.right) / 2, (handle.bottom + handle.top) / 2);
  }
}

function paintCross(pen: Pen, x: number, y: number): void {
  const [across, down] = [acrossOf(pen.frame, x), downOf(pen.frame, y)];
  strokeLine(pen, [across - 5, down - 5, across + 5, down + 5], inks['red-lead'], 1.5);
  strokeLine(pen, [across - 5, down + 5, across + 5, down - 5], inks['red-lead'], 1.5);
}
