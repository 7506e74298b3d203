import type { Point } from '../geometry/polygon';
import type { Pose } from './kinds';
import type { Rect } from './slabs';
import { joinedWithin, less } from './trace-cuts';

/**
 * The cuts that open a panel's notches and holes after its box has been cut out: its outline inside the box,
 * and the sides of those rectangles of its waste that are taken out whole, as far as they
 * do not already lie along the outline (across a kerf).
 * Frame of the pose, whose box has its lower left corner at the origin.
 */
export function openingCuts(
  { shape, width, height }: Pose,
  waste: readonly Rect[],
  kerf: number,
): [Point, Point][] {
  const cuts: [Point, Point][] = [];
  for (const ring of [shape.outer, ...shape.holes]) {
    ring.forEach((from, i) => {
      const to = ring[(i + 1) % ring.length]!;
      const onBox =
        (from.x === to.x && (from.x === 0 || from.x === width)) ||
        (from.y === to.y && (from.y === 0 || from.y === height));
      if (!onBox) cuts.push([from, to]);
    });
  }
  const outline = [...cuts];
  const side = (vertical: boolean, at: number, from: number, to: number, kerfAt: number) => {
    const covered = outline.flatMap(([a, b]): [number, number][] => {
      if (vertical ? a.x !== b.x : a.y !== b.y) return [];
      const line = vertical ? a.x : a.y;
      const [low, high] = vertical ? [a.y, b.y] : [a.x, b.x];
      return line === at || line === kerfAt ? [[Math.min(low, high) - kerf, Math.max(low, high) + kerf]] : [];
    });
    for (const [low, high] of less([[from, to]], joinedWithin(covered, 0))) {
      if (vertical)
        cuts.push([
          { x: at, y: low },
          { x: at, y: high },
        ]);
      else
        cuts.push([
          { x: low, y: at },
          { x: high, y: at },
        ]);
    }
  };
  for (const [left, bottom, right, top] of waste) {
    if (left > 0) side(true, left, bottom, top, left - kerf);
    if (right < width) side(true, right, bottom, top, right + kerf);
    if (bottom > 0) side(false, bottom, left, right, bottom - kerf);
    if (top < height) side(false, top, left, right, top + kerf);
  }
  return cuts;
}
