import type { Box } from '../../../core/geometry/polygon';
import { lengthFigure } from '../../look/figures';
import type { UsualHeight } from '../usual-heights';
import { acrossOf, condensed, downOf, inks, strokeLine, type Pen } from './pen';

/** Each limit as a dashed line across the wall, its name and height at the right, clear of the others. */
export function paintHeights(pen: Pen, heights: readonly UsualHeight[], { left, right }: Box): void {
  const { context, frame } = pen;
  const [x1, x2] = [acrossOf(frame, left), acrossOf(frame, right)];
  context.font = `13px ${condensed}`;
  context.textAlign = 'right';
  context.textBaseline = 'alphabetic';
  for (const { name, from, to } of heights) {
    for (const height of from === to ? [to] : [from, to]) {
      const y = downOf(frame, height * 100);
      strokeLine(pen, [x1, y, x2, y], inks.soft, 1, [3, 5]);
      // The lower limit has its name below the line, so that narrow bands keep both.
      const isLower = height === from && from !== to;
      const [text, x, down] = [`${name} ${lengthFigure(height)}`, x2 - 6, isLower ? y + 14 : y - 5] as const;
      context.strokeStyle = 'rgb(251 250 242 / 85%)';
      context.lineWidth = 4;
      context.strokeText(text, x, down);
      context.fillStyle = inks.ink;
      context.fillText(text, x, down);
    }
  }
}
