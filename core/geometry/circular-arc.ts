import type { Point } from './polygon';

/** A true circular arc in hundredths, not rounded: travelled from the angle `from` through `sweep`. */
export interface CircularArc {
  readonly centre: { readonly x: number; readonly y: number };
  readonly radius: number;
  /** Radians, anticlockwise from the x axis. */
  readonly from: number;
  /** Radians, in (−2π, 2π); positive is anticlockwise. */
  readonly sweep: number;
}

interface Place {
  readonly x: number;
  readonly y: number;
}

/**
 * The arc from `a` past `via` to `b` (hundredths; `via` need not be whole).
 *
 * @returns null where it is a straight line for every purpose: it rises less than a hundredth part of a
 *   hundredth over its chord; `via` is in line beyond `a` or `b`, which asks for a circle of over 10 km; or
 *   `a` and `b` are one point, through which no single circle runs.
 * Source: circumcentre from the perpendicular bisectors, school geometry.
 */
export function arcThrough(a: Place, via: Place, b: Place): CircularArc | null {
  const ux = via.x - a.x;
  const uy = via.y - a.y;
  const vx = b.x - a.x;
  const vy = b.y - a.y;
  const cross = ux * vy - uy * vx;
  if (cross === 0) return null;
  const uu = ux * ux + uy * uy;
  const vv = vx * vx + vy * vy;
  const cx = (vy * uu - uy * vv) / (2 * cross);
  const cy = (ux * vv - vx * uu) / (2 * cross);
  const from = Math.atan2(-cy, -cx);
  const turn = (Math.atan2(vy - cy, vx - cx) - from + 4 * Math.PI) % (2 * Math.PI);
  const sweep = cross > 0 ? turn : turn - 2 * Math.PI;
  const radius = Math.hypot(cx, cy);
  const straight = 2 * radius * Math.sin(sweep / 4) ** 2 < 0.01;
  const roundTheWorld = Math.abs(sweep) > Math.PI && radius > 1e9;
  if (straight || roundTheWorld) return null;
  return { centre: { x: a.x + cx, y: a.y + cy }, radius, from, sweep };
}

export function reverseArc({ centre, radius, from, sweep }: CircularArc): CircularArc {
  return { centre, radius, from: from + sweep, sweep: -sweep };
}

/** The point of the arc at an angle, not rounded. */
export function pointAt({ centre, radius }: CircularArc, angle: number): Point {
  return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
}

/** Signed area between the arc and its chord, hundredths squared: positive where the arc turns anticlockwise. */
export function segmentArea({ radius, sweep }: CircularArc): number {
  return (radius * radius * (sweep - Math.sin(sweep))) / 2;
}

/**
 * The arc parted where it runs level or upright, so that its highest, lowest, leftmost and rightmost points
 * are ends of parts. Parts shorter than `least` (hundredths of arc length) are not parted off.
 */
export function partAtExtremes(arc: CircularArc, least: number): CircularArc[] {
  const quarter = Math.PI / 2;
  const direction = Math.sign(arc.sweep);
  const length = Math.abs(arc.sweep);
  const nearest = least / arc.radius;
  const parts: CircularArc[] = [];
  let done = 0;
  let next = direction > 0 ? Math.ceil(arc.from / quarter) : Math.floor(arc.from / quarter);
  for (; ; next += direction) {
    const at = (next * quarter - arc.from) * direction;
    if (at > length - nearest) break;
    if (at < done + nearest) continue;
    parts.push({ ...arc, from: arc.from + done * direction, sweep: (at - done) * direction });
    done = at;
  }
  // An end that is an extreme itself is reached by whole quarters, not by adding up.
  parts.push({ ...arc, from: arc.from + done * direction, sweep: (length - done) * direction });
  return parts;
}
