import { flattenCircle } from '../geometry/arc';
import { difference, intersection, offsetRound } from '../geometry/clip';
import {
  boxesMeet,
  boxOf,
  boxOfRegion,
  isBox,
  rectangleOfBox,
  type Box,
  type Polygon,
  type Region,
} from '../geometry/polygon';
import { toHundredth, type Hundredth, type Mm } from '../units';
import { edgeDistance } from './derating';
import type { Face, Screw } from './wall-faces';

/** Where on a face the centre of a magnet has to be for its pull to count; wall frame, hundredths. */
export interface FaceBands {
  /** Its rim is 1.5 diameters or more from every edge, joint, hole and screw head: the pull counts in full. */
  readonly clear: Region;
  /** It lies wholly on the face, but nearer than that: half counts. */
  readonly near: Region;
}

/**
 * The bands of a face for a magnet, as `behindMagnet` and `derating` have them at every point. Edges are straight or follow a
 * circle about a corner, within 0.02 mm; of rectangles they are exact to a hundredth, rounded to the careful side.
 *
 * @param screws whose heads may reach onto the face; others do no harm
 * @param diameter of the magnet, or its widest measure, mm
 */
export function bandsOfFace(
  { outline, box }: Pick<Face, 'outline' | 'box'>,
  screws: readonly Screw[],
  diameter: Mm,
): FaceBands {
  const toRim = upToHundredth(diameter / 2);
  const toClear = upToHundredth((0.5 + edgeDistance) * diameter);
  const heads = screws.filter(({ x, y, diameter: head }) =>
    boxesMeet(box, boxAbout({ x, y }, head / 2 + toClear / 100)),
  );
  if (heads.length === 0 && isBox(outline)) return bandsOfBox(box, toRim, toClear);
  const onFace = less(offsetRound([outline], -toRim), heads, toRim);
  const clear = less(offsetRound([outline], -toClear), heads, toClear);
  return { clear, near: clear.length === 0 ? onFace : difference(onFace, clear) };
}

function bandsOfBox(box: Box, toRim: Hundredth, toClear: Hundredth): FaceBands {
  const onFace = shrink(box, toRim);
  const clear = shrink(box, toClear);
  if (!onFace) return { clear: [], near: [] };
  if (!clear) return { clear: [], near: [rectangleOfBox(onFace)] };
  const hole = [...rectangleOfBox(clear).outer].reverse();
  // From the lowest, then leftmost corner, as every ring.
  return {
    clear: [rectangleOfBox(clear)],
    near: [{ outer: rectangleOfBox(onFace).outer, holes: [[hole.at(-1)!, ...hole.slice(0, -1)]] }],
  };
}

/** Less every point nearer than a distance to the head of a screw. */
function less(region: Region, heads: readonly Screw[], distance: Hundredth): Region {
  if (region.length === 0 || heads.length === 0) return region;
  const discs = heads.map(({ x, y, diameter }): Polygon => {
    const round = flattenCircle({ x, y }, diameter + (2 * distance) / 100, 'circumscribed');
    return { outer: round.ring, holes: [] };
  });
  return difference(region, ...discs.map((disc) => [disc]));
}

/** The part of a region within another and the part without. */
export function splitByRegion(
  region: Region,
  by: Region,
): { readonly within: Region; readonly without: Region } {
  const own = region.length > 0 && by.length > 0 ? boxOfRegion(region) : undefined;
  const met = by.filter(({ outer }) => own && boxesMeet(own, boxOf(outer)));
  if (met.length === 0) return { within: [], without: region };
  return { within: intersection(region, met), without: difference(region, met) };
}

/** Undefined where nothing is left. */
function shrink({ left, right, bottom, top }: Box, by: Hundredth): Box | undefined {
  const small = { left: left + by, right: right - by, bottom: bottom + by, top: top - by };
  return small.right > small.left && small.top > small.bottom ? small : undefined;
}

function boxAbout({ x, y }: { readonly x: Mm; readonly y: Mm }, by: Mm): Box {
  return {
    left: toHundredth(x - by),
    right: toHundredth(x + by),
    bottom: toHundredth(y - by),
    top: toHundredth(y + by),
  };
}

/** Up to the next whole hundredth, but for the last digit that a product leaves behind. */
function upToHundredth(length: Mm): Hundredth {
  return Math.ceil(length * 100 - 1e-6);
}
