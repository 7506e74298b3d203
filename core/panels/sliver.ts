import { boxOf, isBox, isRectilinear, type Box, type Polygon } from '../geometry/polygon';
import type { Hundredth } from '../units';
import { areaEdges } from './area-edges';
import { blocksArea, blocksInBox, partsOf, type Blocks } from './blocks';
import { lostToSquare } from './lost-to-square';
import { leastLostArea, type NarrowPlace } from './narrow-place';
import { openedBlocks } from './opening-of-blocks';
import { quickSliver } from './quick-sliver';

/**
 * The narrowest place of a panel that makes it a sliver, or null. The panel's shape is opened by a square of
 * side `leastWidth`; a lost part of more than 1 mm² counts if it touches two panel edges whose directions are
 * within 30° of opposite, so that a sloping edge alone does not.
 *
 * Exact for rectilinear panels. For others the opening is made with a square 0.02 mm smaller, the tolerance to
 * which curves are drawn, so that a strip of just the least width is never lost to rounding.
 */
export function narrowPlace(panel: Polygon, leastWidth: Hundredth): NarrowPlace | null {
  if (leastWidth <= 0) return null;
  if (isRectilinear(panel)) return narrowBlocks(panel, leastWidth);
  return quickSliver(panel, leastWidth) === false ? null : lostToSquare(panel, leastWidth);
}

/**
 * Whether a panel is a sliver: as `narrowPlace`, but faster where only that is asked.
 *
 * @param beforeClipping told of a panel that only the clipper can judge, which takes a thousand times as long
 */
export function isSliver(
  panel: Polygon,
  leastWidth: Hundredth,
  beforeClipping?: (panel: Polygon) => void,
): boolean {
  if (leastWidth <= 0) return false;
  if (isRectilinear(panel)) return narrowBlocks(panel, leastWidth) !== null;
  const quick = quickSliver(panel, leastWidth);
  if (quick !== undefined) return quick;
  beforeClipping?.(panel);
  return lostToSquare(panel, leastWidth) !== null;
}

function narrowBlocks(panel: Polygon, leastWidth: Hundredth): NarrowPlace | null {
  const box = boxOf(panel.outer);
  if (isBox(panel)) return narrowBox(box, leastWidth);
  return narrowestLost(blocksInBox(areaEdges([panel]), box), leastWidth);
}

/** A rectangle is lost as a whole, or not at all. */
function narrowBox({ left, bottom, right, top }: Box, leastWidth: Hundredth): NarrowPlace | null {
  const width = Math.min(right - left, top - bottom);
  if (width >= leastWidth || (right - left) * (top - bottom) <= leastLostArea) return null;
  return { width, at: { x: Math.round((left + right) / 2), y: Math.round((bottom + top) / 2) } };
}

/** The narrowest lost part of a raster, as `narrowPlace`; the raster is one connected panel. */
export function narrowestLost(blocks: Blocks, leastWidth: Hundredth): NarrowPlace | null {
  const opened = openedBlocks(blocks, leastWidth);
  const lost = blocks.filled.map((value, block) => (value && !opened[block] ? 1 : 0));
  if (!lost.includes(1)) return null;
  let narrowest: NarrowPlace | null = null;
  for (const part of partsOf({ ...blocks, filled: lost })) {
    if (blocksArea(part) <= leastLostArea || !touchesOpposite(part, blocks)) continue;
    const place = placeOf(part);
    if (!narrowest || place.width < narrowest.width) narrowest = place;
  }
  return narrowest;
}

/** Whether a part lies along a left and a right edge of the panel, or along a lower and an upper one. */
function touchesOpposite(part: Blocks, { columns, rows, filled }: Blocks): boolean {
  let [left, right, below, above] = [false, false, false, false];
  part.filled.forEach((value, block) => {
    if (!value) return;
    const i = block % columns;
    const j = (block - i) / columns;
    left ||= i === 0 || !filled[block - 1];
    right ||= i === columns - 1 || !filled[block + 1];
    below ||= j === 0 || !filled[block - columns];
    above ||= j === rows - 1 || !filled[block + columns];
  });
  return (left && right) || (below && above);
}

function placeOf({ xs, ys, columns, filled }: Blocks): NarrowPlace {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  filled.forEach((value, block) => {
    if (!value) return;
    const i = block % columns;
    const j = (block - i) / columns;
    left = Math.min(left, xs[i]!);
    right = Math.max(right, xs[i + 1]!);
    bottom = Math.min(bottom, ys[j]!);
    top = Math.max(top, ys[j + 1]!);
  });
  const at = { x: Math.round((left + right) / 2), y: Math.round((bottom + top) / 2) };
  return { width: Math.min(right - left, top - bottom), at };
}
