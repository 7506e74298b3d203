import { boxAboutBoxes, extentOf } from '../../../core/job/extent';

import type { MmBox, WallObject } from '../../../core/job/shape';
import { polygonOf } from '../rings';
import { acrossOf, downOf, inks, strokeLine, strokePolygon, type Pen } from './pen';

/** Several chosen objects: each outlined, the first one more firmly, and a dashed box about all with its leaders. */
export function paintSeveral(pen: Pen, first: WallObject, others: readonly WallObject[]): void {
  for (const object of others) strokePolygon(pen, polygonOf(object), inks['red-lead'], 1.5);
  strokePolygon(pen, polygonOf(first), inks['red-lead'], 3);
  const box = boxAboutBoxes([first, ...others].map(extentOf));
  const { left, top, right, foot } = paintDashedBox(pen, box, 5);
  const leader = (line: readonly [number, number, number, number]) =>
    strokeLine(pen, line, inks['red-lead'], 1, [2, 3]);
  leader([left, foot, left, pen.frame.height]);
  leader([right, foot, right, pen.frame.height]);
  leader([0, top, left, top]);
  leader([0, foot, left, foot]);
}

/** The frame that a hand draws about what is to be chosen. */
export function paintFraming(pen: Pen, box: MmBox): void {
  const { left, top, right, foot } = paintDashedBox(pen, box, 0);
  pen.context.save();
  pen.context.globalAlpha = 0.08;
  pen.context.fillStyle = inks['red-lead'];
  pen.context.fillRect(left, top, right - left, foot - top);
  pen.context.restore();
}

/** @returns the sides of the box in px, without what it is drawn outside of them */
function paintDashedBox(pen: Pen, { x, y, width, height }: MmBox, outside: number) {
  const [left, right] = [acrossOf(pen.frame, x * 100), acrossOf(pen.frame, (x + width) * 100)];
  const [foot, top] = [downOf(pen.frame, y * 100), downOf(pen.frame, (y + height) * 100)];
  const { context } = pen;
  context.strokeStyle = inks['red-lead'];
  context.lineWidth = 1;
  context.setLineDash([6, 4]);
  context.strokeRect(left - outside, top - outside, right - left + 2 * outside, foot - top + 2 * outside);
  context.setLineDash([]);
  return { left, top, right, foot };
}
