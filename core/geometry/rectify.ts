import { project, type FittedView, type Homography, type Point2 } from './homography';

/** A box on the wall, mm. */
export interface WallArea {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** What of a photo is seen square-on, and how finely. */
export interface RectifiedArea extends WallArea {
  /** px of the rectified picture, and how many of them a millimetre has; both ways the same. */
  readonly width: number;
  readonly height: number;
  readonly scale: number;
}

/** px: more of a picture would fill the memory of a tablet. */
const mostPixels = 6_000_000;
const longestSide = 4096;
/** Points this much nearer the horizon than the nearest marked one are left out: there a pixel is metres wide. */
const nearHorizon = 0.05;

/**
 * The part of the wall that a photo shows, within some area, and as many pixels as the photo has for it.
 *
 * @param width, height of the photo, px
 * @param points marked in the photo, px: they lie on the wall, whatever else of the photo does not
 * @returns null if the photo shows nothing of the area
 */
export function rectifiedArea(
  view: FittedView,
  { width, height }: { readonly width: number; readonly height: number },
  points: readonly Point2[],
  area: WallArea,
): RectifiedArea | null {
  const third = (px: Point2) => project(view.toWall, px)[2];
  const least = Math.min(...points.map(third)) * nearHorizon;
  const corners: readonly Point2[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  const before = clipped(corners, (px) => third(px) - least);
  const onWall = before.map((px): Point2 => [project(view.toWall, px)[0], project(view.toWall, px)[1]]);
  const sides: ((at: Point2) => number)[] = [
    ([x]) => x - area.left,
    ([x]) => area.right - x,
    ([, y]) => y - area.bottom,
    ([, y]) => area.top - y,
  ];
  const seen = sides.reduce<readonly Point2[]>((ring, side) => clipped(ring, side), onWall);
  if (seen.length < 3) return null;
  const left = Math.min(...seen.map(([x]) => x));
  const right = Math.max(...seen.map(([x]) => x));
  const bottom = Math.min(...seen.map(([, y]) => y));
  const top = Math.max(...seen.map(([, y]) => y));
  if (!(right - left > 0.1 && top - bottom > 0.1)) return null;
  const inPhoto = seen.map((at): Point2 => [project(view.toPhoto, at)[0], project(view.toPhoto, at)[1]]);
  // A little finer than on average, as the near part of the wall is taken finer than the far one.
  const wanted = 1.3 * Math.sqrt(Math.abs(areaOf(inPhoto) / areaOf(seen)));
  const scale = Math.min(
    wanted,
    longestSide / Math.max(right - left, top - bottom),
    Math.sqrt(mostPixels / ((right - left) * (top - bottom))),
  );
  return {
    left,
    bottom,
    right,
    top,
    scale,
    width: Math.max(1, Math.ceil((right - left) * scale)),
    height: Math.max(1, Math.ceil((top - bottom) * scale)),
  };
}

/** Pixels row by row from the top, four bytes each: red, green, blue, opacity. */
export interface Pixels {
  readonly data: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
}

/**
 * The wall square-on: every pixel of the area is looked up in the photo, between the four pixels around it. Where the
 * photo has nothing it is clear. Rows `from` to `to` only, so that others can be done in between.
 *
 * @param toPhoto from mm to px
 */
export function rectify(
  photo: Pixels,
  toPhoto: Homography,
  area: RectifiedArea,
  into: Pixels,
  { from = 0, to = area.height } = {},
): void {
  const { data, width, height } = photo;
  const out = into.data;
  const step = 1 / area.scale;
  const [a, b, c, d, e, f, g, h, i] = toPhoto as unknown as Nine;
  for (let row = from; row < to; row++) {
    const y = area.top - (row + 0.5) * step;
    for (let column = 0; column < area.width; column++) {
      const x = area.left + (column + 0.5) * step;
      const w = g * x + h * y + i;
      if (!(w > 0)) continue;
      // The middle of the first pixel lies half a pixel from the corner.
      const u = (a * x + b * y + c) / w - 0.5;
      const v = (d * x + e * y + f) / w - 0.5;
      if (!(u >= -0.5 && v >= -0.5 && u <= width - 0.5 && v <= height - 0.5)) continue;
      const u0 = Math.floor(u);
      const v0 = Math.floor(v);
      const s = u - u0;
      const t = v - v0;
      const left = u0 < 0 ? 0 : u0;
      const right = u0 + 1 < width ? u0 + 1 : width - 1;
      const upper = (v0 < 0 ? 0 : v0) * width;
      const lower = (v0 + 1 < height ? v0 + 1 : height - 1) * width;
      const at = (row * area.width + column) * 4;
      const [p, q, r, z] = [(upper + left) * 4, (upper + right) * 4, (lower + left) * 4, (lower + right) * 4];
      for (let k = 0; k < 4; k++) {
        const above = data[p + k]! * (1 - s) + data[q + k]! * s;
        const below = data[r + k]! * (1 - s) + data[z + k]! * s;
        out[at + k] = above * (1 - t) + below * t;
      }
    }
  }
}

type Nine = [number, number, number, number, number, number, number, number, number];

/** The part of a convex ring where a side's distance is not negative (Sutherland and Hodgman, 1974; from memory). */
function clipped(ring: readonly Point2[], distance: (point: Point2) => number): readonly Point2[] {
  return ring.flatMap((point, i) => {
    const next = ring[(i + 1) % ring.length]!;
    const [here, there] = [distance(point), distance(next)];
    const kept: Point2[] = here >= 0 ? [point] : [];
    if (here >= 0 === there >= 0) return kept;
    const share = here / (here - there);
    return [
      ...kept,
      [point[0] + (next[0] - point[0]) * share, point[1] + (next[1] - point[1]) * share] as Point2,
    ];
  });
}

function areaOf(ring: readonly Point2[]): number {
  return (
    ring.reduce((sum, [x, y], i) => {
      const [nextX, nextY] = ring[(i + 1) % ring.length]!;
      return sum + x * nextY - nextX * y;
    }, 0) / 2
  );
}
