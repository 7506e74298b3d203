import { partAtExtremes, pointAt, type CircularArc } from './circular-arc';
import type { Point } from './polygon';

/*
 * An arc as a chain of corners on whole hundredths, on one side of its circle and within two hundredths
 * (0.02 mm) of it. One hundredth pays for the rounding of the corners, the other for the straightness of the
 * edges between them:
 *
 *      inside: corners on or          outside: corners beyond the circle,
 *      within the circle              edges clear of it
 *
 *            .--V--.                       V-----V
 *          V'       'V                    / .---. \
 *         /           \                  V-'     '-V
 */

/** The least radius drawn as a curve, hundredths: below a tenth of a millimetre two hundredths are too coarse. */
export const LEAST_RADIUS = 10;
/** What edges may stand off the circle; the rest of a hundredth covers the curvature of the rounding itself. */
const EDGE_ALLOWANCE = 0.9;
/** How far rounding may shift a corner along the circle, hundredths. */
const SHIFT = 2;

/**
 * Corners strictly between the ends of an arc.
 *
 * The ends themselves are the caller's: with them, the chain keeps to its side of the circle. The arc's
 * highest, lowest, leftmost and rightmost points are kept where they are whole hundredths: inside as corners,
 * outside as points of a level or upright edge.
 *
 * @param side of the circle, not of a shape
 * @returns corners in the order of travel; two may coincide on arcs of a few hundredths; [] for a radius
 *   below `LEAST_RADIUS`
 */
export function cornersAlong(arc: CircularArc, side: 'inside' | 'outside'): Point[] {
  if (arc.radius < LEAST_RADIUS) return [];
  const parts = partAtExtremes(arc, 5 * SHIFT);
  const corners: Point[] = [];
  parts.forEach((part, i) => {
    if (side === 'outside') corners.push(...tangentCorners(part));
    else {
      if (i > 0) corners.push(cornerOnExtreme(part));
      corners.push(...chordCorners(part));
    }
  });
  return corners;
}

/** Corners of chords of equal length; an even number where `even` is asked for. */
export function chordCorners(arc: CircularArc, even = false): Point[] {
  const sweep = Math.abs(arc.sweep);
  const half = halfAngle(EDGE_ALLOWANCE / arc.radius) - SHIFT / arc.radius;
  let chords = Math.max(1, Math.ceil(sweep / (2 * half)));
  if (even && chords % 2 === 0) chords += 1;
  const corners: Point[] = [];
  for (let i = 1; i < chords; i++) {
    corners.push(nearestCorner(arc, arc.from + (arc.sweep * i) / chords, arc.radius, -1, []));
  }
  return corners;
}

/**
 * Corners of edges that touch the circle: the first edge on the tangent at the arc's start, the last on that
 * at its end. Corners are chosen no nearer than ρ = R / cos(φ + δ), where φ is half the angle between two
 * and δ the angle that rounding may add, so that every edge keeps at least R from the centre.
 */
export function tangentCorners(arc: CircularArc, even = false): Point[] {
  const { radius } = arc;
  const direction = Math.sign(arc.sweep);
  const sweep = Math.abs(arc.sweep);
  const slack = SHIFT / radius;
  const widest = halfAngle(EDGE_ALLOWANCE / (radius + EDGE_ALLOWANCE)) - slack;
  let count = Math.max(1, Math.ceil((sweep - 2 * slack) / (2 * widest)));
  if (even && count % 2 === 1) count += 1;
  const half = count === 1 ? sweep / 2 - slack : (sweep - 2 * slack) / (2 * count);
  const beyond = radius / Math.cos(half + slack);
  const corners: Point[] = [];
  for (let i = 0; i < count; i++) {
    const angle = arc.from + direction * (half + slack + 2 * half * i);
    const tangents = [];
    if (i === 0) tangents.push(arc.from);
    if (i === count - 1) tangents.push(arc.from + arc.sweep);
    corners.push(nearestCorner(arc, angle, beyond, 1, tangents));
  }
  return corners;
}

/** The start of an arc, which lies on an axis of its circle, as a corner within the circle. */
export function cornerOnExtreme(arc: CircularArc): Point {
  return nearestCorner(arc, arc.from, arc.radius, -1, []);
}

/** The angle whose cosine is 1 − `rise`, kept exact where the rise is minute. */
function halfAngle(rise: number): number {
  return 2 * Math.asin(Math.sqrt(rise / 2));
}

/**
 * The whole point nearest to a circle of radius ρ about the arc's centre, near an angle, on one side of the
 * circle (+1 beyond it, −1 within it) and beyond the arc's tangents at the given angles. Walking from a cell's
 * inner corner to its outer one, each step moves at most one hundredth across the circle: one of the corners
 * passed is within one hundredth of it, on either side.
 */
function nearestCorner(
  arc: CircularArc,
  angle: number,
  rho: number,
  side: 1 | -1,
  tangents: readonly number[],
): Point {
  const { centre, radius } = arc;
  // What double precision leaves of a point so far from its centre.
  const noise = Math.max(1e-6, radius * 1e-15);
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const x0 = Math.round(centre.x + rho * cos);
  const y0 = Math.round(centre.y + rho * sin);
  const clear = tangents.map((at) => ({ cos: Math.cos(at), sin: Math.sin(at) }));
  let best: Point | undefined;
  let least = Infinity;
  let leastShift = Infinity;
  for (let x = x0 - 2; x <= x0 + 2; x++) {
    for (let y = y0 - 2; y <= y0 + 2; y++) {
      const dx = x - centre.x;
      const dy = y - centre.y;
      const off = side * (Math.sqrt(dx * dx + dy * dy) - rho);
      if (off < -noise || off > least + noise) continue;
      const shift = Math.abs(dy * cos - dx * sin);
      if (shift > SHIFT || (off > least - noise && shift > leastShift - noise)) continue;
      if (clear.some((at) => dx * at.cos + dy * at.sin < radius - noise)) continue;
      best = { x: x + 0, y: y + 0 };
      least = off;
      leastShift = shift;
    }
  }
  if (!best) {
    const { x, y } = pointAt(arc, angle);
    throw new Error(`No corner for an arc of radius ${radius} near ${x}, ${y}.`);
  }
  return best;
}
