import { difference, intersection, union } from '../../geometry/clip';
import { doubleSignedArea, translate, type Point, type Region } from '../../geometry/polygon';
import { toHundredth, type Mm } from '../../units';

/*
 * Shade as drawing offices cast it (common practice, no source): light over the left shoulder at 45°, so that a shadow is
 * as long as the thing stands out of the wall, or as the opening is deep. A shadow therefore says a depth.
 */

/**
 * The shadow that a thing casts on the wall beside it.
 *
 * @param depth how far it stands out of the wall, mm
 * @param wall what a shadow can fall on
 * @returns hundredths, wall frame; [] for a thing that lies flat
 */
export function castShadow(thing: Region, depth: Mm, wall: Region): Region {
  const by = toHundredth(depth);
  if (by <= 0 || thing.length === 0) return [];
  const swept = thing.flatMap(({ outer }) => [
    translate({ outer, holes: [] }, by, -by),
    ...outer.flatMap((from, i) => sweptEdge(from, outer[(i + 1) % outer.length]!, by)),
  ]);
  return intersection(difference(union(...swept.map((one) => [one])), thing), wall);
}

/** The part of the bottom of a recess that its left and upper edges shade. */
export function recessShadow(opening: Region, depth: Mm): Region {
  const by = toHundredth(depth);
  if (by <= 0) return [];
  return difference(
    opening,
    opening.map((one) => translate(one, by, -by)),
  );
}

function sweptEdge(from: Point, to: Point, by: number) {
  const corners = [from, to, { x: to.x + by, y: to.y - by }, { x: from.x + by, y: from.y - by }];
  const area = doubleSignedArea(corners);
  if (area === 0) return [];
  return [{ outer: area > 0 ? corners : corners.reverse(), holes: [] }];
}
