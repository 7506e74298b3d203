import type { Box, Point } from './polygon';

/**
 * Finds which of many boxes hold a point without looking at all of them: the plane in cells, each with the boxes that reach
 * into it.
 *
 * @param boxes hundredths; may overlap
 * @returns for a point the numbers of the boxes that hold it, edges included, ascending
 */
export function boxesHolding(boxes: readonly Box[]): (point: Point) => readonly number[] {
  if (boxes.length === 0) return () => [];
  const all = boxAround(boxes);
  const { left, bottom } = all;
  const [width, height] = [all.right - left, all.top - bottom];
  // As many cells along each side as a square of so many boxes has: a box that is large against that reaches into many.
  const side = Math.ceil(Math.sqrt(boxes.length));
  const column = (x: number) => Math.floor(((x - left) / (width + 1)) * side);
  const row = (y: number) => Math.floor(((y - bottom) / (height + 1)) * side);
  const cells: number[][] = Array.from({ length: side * side }, () => []);
  for (const [i, box] of boxes.entries())
    for (let c = column(box.left); c <= column(box.right); c++)
      for (let r = row(box.bottom); r <= row(box.top); r++) cells[r * side + c]!.push(i);
  return ({ x, y }) => {
    if (!isIn(all, x, y)) return [];
    return cells[row(y) * side + column(x)]!.filter((i) => isIn(boxes[i]!, x, y));
  };
}

function isIn({ left, right, bottom, top }: Box, x: number, y: number): boolean {
  return x >= left && x <= right && y >= bottom && y <= top;
}

function boxAround(boxes: readonly Box[]): Box {
  return boxes.reduce((a, b) => ({
    left: Math.min(a.left, b.left),
    right: Math.max(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
    top: Math.max(a.top, b.top),
  }));
}
