import { Matrix, solve, SVD } from 'ml-matrix';
import { faultOfPairs } from './homography-faults';

/** A point of a plane. */
export type Point2 = readonly [number, number];

/** A point in a photo (px from its upper left corner, y down) and the same point on the wall (mm, y up). */
export interface PointPair {
  readonly px: Point2;
  readonly at: Point2;
}

/** A plane seen through another: three rows of three, one after another, up to a common factor. */
export type Homography = readonly number[];

/** The view of a wall in a photo. */
export interface FittedView {
  /** From px to mm; the third coordinate is positive for what lies before the camera. */
  readonly toWall: Homography;
  /** From mm to px, likewise. */
  readonly toPhoto: Homography;
  /** How far each point lies from where the photo has it, mm on the wall; all 0 with four points. */
  readonly residuals: readonly number[];
  /** Root mean square of these, mm. */
  readonly rms: number;
}

const mostRounds = 30;

/**
 * The view that brings the points of a photo to their places on the wall: exact with four pairs, with more the one whose
 * squared distances on the wall add up to least.
 *
 * @returns `fault`: why the points give no view, in a sentence; with the numbers of the points from 1
 * Source: normalised direct linear transformation, R. Hartley, In Defense of the Eight-Point Algorithm, IEEE PAMI 19
 * (1997) 580–593; R. Hartley, A. Zisserman, Multiple View Geometry, 2nd ed. 2004, algorithm 4.2; then Levenberg–Marquardt
 * on the transfer error in one image, section 4.2.2 (all from memory).
 */
export function fitView(pairs: readonly PointPair[]): FittedView | { readonly fault: string } {
  const fault = faultOfPairs(pairs);
  if (fault) return { fault };
  const photo = normalisation(pairs.map(({ px }) => px));
  const wall = normalisation(pairs.map(({ at }) => at));
  const near = pairs.map(({ px, at }): PointPair => ({ px: photo.apply(px), at: wall.apply(at) }));
  const linear = directLinear(near);
  const h = linear && pairs.length > 4 ? refined(linear, near) : linear;
  if (!h) return { fault: noView };
  const toWall = product(wall.back, product(h, photo.there));
  const toPhoto = inverse(toWall);
  if (!toPhoto || pairs.some(({ px }) => !(project(toWall, px)[2] > 0))) return { fault: noView };
  const residuals = pairs.map(({ px, at }) => distanceTo(toWall, px, at));
  const rms = Math.sqrt(residuals.reduce((sum, one) => sum + one * one, 0) / residuals.length);
  return { toWall, toPhoto, residuals, rms };
}

const noView =
  'No photo of a flat wall shows the points like this: check which place on the wall belongs to which point.';

/** Where a point goes: its two coordinates and the third one, positive before the camera. */
export function project(h: Homography, [x, y]: Point2): readonly [number, number, number] {
  const w = h[6]! * x + h[7]! * y + h[8]!;
  return [(h[0]! * x + h[1]! * y + h[2]!) / w, (h[3]! * x + h[4]! * y + h[5]!) / w, w];
}

function distanceTo(h: Homography, px: Point2, at: Point2): number {
  const [x, y] = project(h, px);
  return Math.hypot(x - at[0], y - at[1]);
}

/** Moves the middle of the points to the origin and their mean distance from it to √2. */
function normalisation(points: readonly Point2[]) {
  const count = points.length;
  const cx = points.reduce((sum, [x]) => sum + x, 0) / count;
  const cy = points.reduce((sum, [, y]) => sum + y, 0) / count;
  const mean = points.reduce((sum, [x, y]) => sum + Math.hypot(x - cx, y - cy), 0) / count;
  const s = Math.SQRT2 / mean;
  return {
    apply: ([x, y]: Point2): Point2 => [(x - cx) * s, (y - cy) * s],
    there: [s, 0, -cx * s, 0, s, -cy * s, 0, 0, 1],
    back: [1 / s, 0, cx, 0, 1 / s, cy, 0, 0, 1],
  };
}

/**
 * The null vector of the equations of all pairs. Its last entry is the third coordinate of the middle of the points; that
 * is positive if all of theirs are, so that it can be set to 1.
 */
function directLinear(pairs: readonly PointPair[]): Homography | null {
  const rows = pairs.flatMap(({ px: [x, y], at: [u, v] }) => [
    [-x, -y, -1, 0, 0, 0, u * x, u * y, u],
    [0, 0, 0, -x, -y, -1, v * x, v * y, v],
  ]);
  // Eight equations have their null vector only among nine rows.
  if (rows.length < 9) rows.push(new Array<number>(9).fill(0));
  const { rightSingularVectors, diagonal } = new SVD(new Matrix(rows));
  const least = diagonal.indexOf(Math.min(...diagonal));
  const h = rightSingularVectors.getColumn(least);
  const scale = h[8]!;
  return Math.abs(scale) < 1e-9 ? null : h.map((entry) => entry / scale);
}

/** Levenberg–Marquardt over the first eight entries, the ninth being 1. */
function refined(start: Homography, pairs: readonly PointPair[]): Homography {
  let h = start;
  let error = squaredError(h, pairs);
  let damping = 1e-3;
  for (let round = 0; round < mostRounds; round++) {
    const { normal, gradient } = equations(h, pairs);
    const largest = Math.max(...normal.diagonal());
    const damped = normal.clone();
    for (let i = 0; i < 8; i++) damped.set(i, i, normal.get(i, i) * (1 + damping) + largest * 1e-15);
    const step = solve(damped, gradient, true).getColumn(0);
    const next = h.map((entry, i) => (i < 8 ? entry + step[i]! : entry));
    const nextError = squaredError(next, pairs);
    const gain = error - nextError;
    if (!(gain >= 0)) {
      damping *= 10;
      if (damping > 1e12) return h;
      continue;
    }
    [h, error] = [next, nextError];
    damping = Math.max(1e-12, damping / 10);
    if (gain <= 1e-16 * error) return h;
  }
  return h;
}

function squaredError(h: Homography, pairs: readonly PointPair[]): number {
  return pairs.reduce((sum, { px, at }) => sum + distanceTo(h, px, at) ** 2, 0);
}

/** The normal equations of one Gauss–Newton step. */
function equations(h: Homography, pairs: readonly PointPair[]) {
  const normal = Matrix.zeros(8, 8);
  const gradient = Matrix.zeros(8, 1);
  for (const { px, at } of pairs) {
    const [x, y] = px;
    const [u, v, w] = project(h, px);
    const [a, b, c] = [x / w, y / w, 1 / w];
    const rows = [
      { row: [a, b, c, 0, 0, 0, -u * a, -u * b], misfit: at[0] - u },
      { row: [0, 0, 0, a, b, c, -v * a, -v * b], misfit: at[1] - v },
    ];
    for (const { row, misfit } of rows) {
      for (let i = 0; i < 8; i++) {
        gradient.set(i, 0, gradient.get(i, 0) + row[i]! * misfit);
        for (let j = 0; j < 8; j++) normal.set(i, j, normal.get(i, j) + row[i]! * row[j]!);
      }
    }
  }
  return { normal, gradient };
}

function product(a: Homography, b: Homography): Homography {
  return Array.from({ length: 9 }, (_, k) => {
    const [i, j] = [Math.floor(k / 3) * 3, k % 3];
    return a[i]! * b[j]! + a[i + 1]! * b[j + 3]! + a[i + 2]! * b[j + 6]!;
  });
}

/** By the adjugate, divided by the determinant so that third coordinates keep their sign. */
function inverse(m: Homography): Homography | null {
  const [a, b, c, d, e, f, g, h, i] = m as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  if (!Number.isFinite(1 / determinant)) return null;
  const adjugate = [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
  return adjugate.map((entry) => entry / determinant);
}
