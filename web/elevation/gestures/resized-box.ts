import type { MmBox } from '../../../core/job/shape';

/** Which edges of a box a handle moves: −1 left or lower, +1 right or upper, 0 neither. */
export interface Handle {
  readonly x: -1 | 0 | 1;
  readonly y: -1 | 0 | 1;
}

/** Nothing is made smaller than this, mm. */
const leastSide = 5;

/**
 * A box with the edges of a handle moved by a distance; the opposite edges stay where they are.
 *
 * @param square both sides stay as long as each other, by the one that was pulled further
 */
export function resizedBox(box: MmBox, handle: Handle, dx: number, dy: number, square = false): MmBox {
  let width = Math.max(leastSide, box.width + handle.x * dx);
  let height = Math.max(leastSide, box.height + handle.y * dy);
  if (square) {
    const side = handle.x === 0 ? height : handle.y === 0 ? width : Math.max(width, height);
    width = height = side;
  }
  return {
    x: handle.x < 0 ? box.x + box.width - width : box.x,
    y: handle.y < 0 ? box.y + box.height - height : box.y,
    width,
    height,
  };
}
