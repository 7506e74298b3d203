import { difference } from '../../geometry/clip';
import { isRectilinear, rectangle, type Polygon } from '../../geometry/polygon';
import { inscribedRectangle } from '../slabs';
import type { Extent } from '../weighings';

/** Rectangles taken from one panel; smaller ones than this share of the first add little. */
const MOST = 4;
const LEAST_SHARE = 0.02;

/**
 * Rectangles that lie in the panel and apart from each other, the largest first: wherever the panel lies, they lie
 * there too, so that they may be weighed as panels of their own.
 *
 * The first is grown by the kerf, as a panel that is a rectangle would be, to one side in each direction; which one
 * depends on how the panel is turned, so the others are cut from what is left beyond a kerf all round it. They stay
 * as they are: the kerf round the panel keeps other panels from them, but between them there is none.
 */
export function inscribedRectangles(shape: Polygon, kerf: number): Extent[] {
  const found: Extent[] = [];
  let rest: readonly Polygon[] = [shape];
  let first = 0;
  // Clipping moves the ends of sloping edges by less than a hundredth.
  const loss = isRectilinear(shape) ? 0 : 2;
  while (found.length < MOST) {
    let best: readonly [number, number, number, number] | null = null;
    let bestArea = LEAST_SHARE * first;
    for (const polygon of rest) {
      const rect = inscribedRectangle(polygon);
      if (!rect) continue;
      const area = (rect[2] - rect[0]) * (rect[3] - rect[1]);
      if (area > bestArea) [best, bestArea] = [rect, area];
    }
    if (!best) break;
    const [left, bottom, right, top] = best;
    const [width, height] = [right - left, top - bottom];
    if (found.length === 0) {
      found.push({ width: width + kerf, height: height + kerf });
      first = bestArea;
      rest = difference(rest, [rectangle(left - kerf, bottom - kerf, width + 2 * kerf, height + 2 * kerf)]);
    } else {
      if (Math.min(width, height) <= 2 * loss) break;
      found.push({ width: width - 2 * loss, height: height - 2 * loss });
      rest = difference(rest, [rectangle(left, bottom, width, height)]);
    }
  }
  return found;
}
