import type { Hundredth } from '../units';
import type { Blocks } from './blocks';

/**
 * What is left of a raster after opening by a square of side `side`: the union of all squares of that side
 * that fit into the shape. In a rectilinear shape every such square lies in a largest inscribed rectangle that
 * is at least `side` wide and high, and every such rectangle is a union of squares; so the opening is the
 * union of those rectangles, which keeps to the raster's own lines and is exact.
 *
 * @returns 1 for every block of the opening, in the order of `filled`
 */
export function openedBlocks({ xs, ys, columns, rows, filled }: Blocks, side: Hundredth): Uint8Array {
  const opened = new Uint8Array(filled.length);
  const throughout = new Uint8Array(columns);
  for (let low = 0; low < rows; low++) {
    throughout.fill(1);
    for (let high = low; high < rows; high++) {
      for (let i = 0; i < columns; i++) throughout[i]! &= filled[high * columns + i]!;
      if (ys[high + 1]! - ys[low]! < side) continue;
      // Runs of columns that are filled over all rows from low to high.
      for (let i = 0; i < columns; i++) {
        if (!throughout[i]) continue;
        const first = i;
        while (i < columns && throughout[i]) i++;
        if (xs[i]! - xs[first]! < side) continue;
        for (let j = low; j <= high; j++) opened.fill(1, j * columns + first, j * columns + i);
      }
    }
  }
  return opened;
}
