import type { Cut, StockFormat } from './plan';

/**
 * The cuts that take a stock sheet's margins off, each right across what is left of it: left, right, bottom, top.
 * Frame of the whole stock sheet. The kerf falls into the margin; a margin narrower than the kerf is cut off at the
 * stock sheet's edge, where the kerf takes all of it.
 */
export function trimCuts({ width, height, trim }: StockFormat, kerf: number): Cut[] {
  if (!trim) return [];
  const { left, right, bottom, top } = trim;
  const full = bottom + height + top;
  const cuts: Cut[] = [];
  const upright = (x: number) => cuts.push({ from: { x, y: 0 }, to: { x, y: full } });
  const level = (y: number) => cuts.push({ from: { x: left, y }, to: { x: left + width, y } });
  if (left > 0) upright(Math.max(0, left - kerf));
  if (right > 0) upright(left + width);
  if (bottom > 0) level(Math.max(0, bottom - kerf));
  if (top > 0) level(bottom + height);
  return cuts;
}
