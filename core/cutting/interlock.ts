import type { FreeSpaces } from './free-spaces';
import type { Pose } from './kinds';

/** Panels covered by more rectangles than this are placed by their box alone: the trial would take too long. */
const MOST_PARTS = 12;

/**
 * Places where a panel that is no rectangle fits although its box does not: two L-panels in each other, two
 * slanted ones along their slope. One of its covering rectangles stands in a corner of a free rectangle; the
 * others must each lie in some free rectangle (if a rectangle is free at all, a maximal one holds it).
 *
 * @param visit called with the lower left corner of the panel's box for each such place
 */
export function eachInterlockedPlace(
  free: FreeSpaces,
  pose: Pose,
  kerf: number,
  visit: (x: number, y: number) => void,
): void {
  const { cover } = pose;
  if (cover.length < 2 || cover.length > MOST_PARTS) return;
  for (const [left, bottom, right, top] of cover) {
    const width = right - left + kerf;
    const height = top - bottom + kerf;
    for (let i = 0; i < free.count; i++) {
      const spareX = free.right[i]! - free.left[i]! - width;
      const spareY = free.top[i]! - free.bottom[i]! - height;
      if (spareX < 0 || spareY < 0) continue;
      for (let corner = 0; corner < 4; corner++) {
        if ((corner & 1 && spareX === 0) || (corner & 2 && spareY === 0)) continue;
        const x = free.left[i]! - left + (corner & 1 ? spareX : 0);
        const y = free.bottom[i]! - bottom + (corner & 2 ? spareY : 0);
        if (liesFree(free, pose, x, y, kerf)) visit(x, y);
      }
    }
  }
}

function liesFree(free: FreeSpaces, { cover }: Pose, x: number, y: number, kerf: number): boolean {
  for (const [left, bottom, right, top] of cover) {
    let isFree = false;
    for (let i = 0; i < free.count && !isFree; i++) {
      isFree =
        free.left[i]! <= x + left &&
        free.bottom[i]! <= y + bottom &&
        free.right[i]! >= x + right + kerf &&
        free.top[i]! >= y + top + kerf;
    }
    if (!isFree) return false;
  }
  return true;
}
