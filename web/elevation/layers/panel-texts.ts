import { boxOf, isRectilinear } from '../../../core/geometry/polygon';
import type { Panel } from '../../../core/panels/panel';
import { hundredthFigure } from '../../look/figures';
import type { Frame } from '../frame';
import { condensed, screenBox } from './pen';

/** A text on a panel; `x` is its left end, `y` its baseline, px. */
export interface PanelText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

export const numberFont = `600 12px ${condensed}`;
export const sizeFont = `12px ${condensed}`;

/** The number within the zone, at the lower left; null where it does not fit at 12 px, or is not on the drawing. */
export function numberOn(frame: Frame, { mark, outline }: Panel): PanelText | null {
  const { x, y, width, height } = screenBox(frame, boxOf(outline.outer));
  if (x > frame.width || y > frame.height || x + width < 0 || y + height < 0) return null;
  const text = mark.slice(mark.lastIndexOf('-') + 1);
  if (width < text.length * 7 + 8 || height < 17) return null;
  return { text, x: x + 5, y: y + height - 6 };
}

/**
 * The size of a cut panel in its middle, where both fit. Of a notched panel the size over all would mislead; its row in
 * the schedule says all.
 */
export function sizeOn(
  frame: Frame,
  panel: Panel,
  widthOf: (words: string) => number,
): (PanelText & { readonly width: number }) | null {
  if (panel.full || !isPlainRectangle(panel)) return null;
  const box = boxOf(panel.outline.outer);
  const { x, y, width, height } = screenBox(frame, box);
  if (height < 40) return null;
  const text = `${hundredthFigure(box.right - box.left)} × ${hundredthFigure(box.top - box.bottom)}`;
  const wide = widthOf(text);
  return wide <= width - 8 ? { text, x: x + (width - wide) / 2, y: y + height / 2 - 4, width: wide } : null;
}

export function isPlainRectangle({ outline }: Panel): boolean {
  return outline.holes.length === 0 && outline.outer.length === 4 && isRectilinear(outline);
}
