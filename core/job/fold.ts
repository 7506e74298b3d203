import { flattenVertices } from '../geometry/arc';
import { toMm, type Mm } from '../units';
import { endsOf, riseOf } from './corners';
import { mapVertices } from './changes';
import type { Vertex, Wall, Zone } from './schema';
import { pointOf } from './shape';

/** From where to where a zone touches the end of its wall; wall frame, mm. */
export interface FoldHeights {
  readonly from: Mm;
  readonly to: Mm;
}

/** Nothing on a wall is set out finer. */
export const nearEnough: Mm = 0.005;

/** Where a zone's outline runs along an end of its wall; null where it does not reach it. */
export function heightsAt(wall: Wall, zone: Zone, end: 'left' | 'right'): FoldHeights | null {
  return heightsAlong(zone.shape, endsOf(wall)[end]);
}

/** The heights of the part on the left as the wall on the right counts them. */
export function carriedHeights(left: Wall, { from, to }: FoldHeights): FoldHeights {
  return { from: tidy(from - riseOf(left)), to: tidy(to - riseOf(left)) };
}

export function areSameHeights(a: FoldHeights, b: FoldHeights): boolean {
  return Math.abs(a.from - b.from) < nearEnough && Math.abs(a.to - b.to) < nearEnough;
}

/** A shape stretched up and down so that what was at the one heights comes to be at the others. */
export function toHeights(zone: Zone, was: FoldHeights, is: FoldHeights): Zone {
  const scale = (is.to - is.from) / (was.to - was.from);
  return mapShape(zone, (x, y) => [x, tidy(is.from + (y - was.from) * scale)]);
}

/** A shape with all that stood on one upright line moved to another. */
export function movedLine(zone: Zone, was: Mm, is: Mm): Zone {
  return mapShape(zone, (x, y) => [Math.abs(x - was) < nearEnough ? is : x, y]);
}

/**
 * The upright line at which a zone ends, and its heights there; null where it ends in a point or a curve. Of several edges
 * on that line the whole stretch counts.
 */
export function endOfZone(zone: Zone, side: 'left' | 'right'): { at: Mm; heights: FoldHeights } | null {
  const xs = flattenVertices(zone.shape, 'inscribed').ring.map(({ x }) => toMm(x));
  const at = side === 'right' ? Math.max(...xs) : Math.min(...xs);
  const heights = heightsAlong(zone.shape, at);
  return heights && { at, heights };
}

function heightsAlong(shape: readonly Vertex[], at: Mm): FoldHeights | null {
  const ys: Mm[] = [];
  shape.forEach((vertex, i) => {
    const next = shape[(i + 1) % shape.length]!;
    const [a, b] = [pointOf(vertex), pointOf(next)];
    const isAlong = Array.isArray(next) && Math.abs(a.x - at) < nearEnough && Math.abs(b.x - at) < nearEnough;
    if (isAlong) ys.push(a.y, b.y);
  });
  return ys.length === 0 ? null : { from: Math.min(...ys), to: Math.max(...ys) };
}

function mapShape(zone: Zone, map: (x: Mm, y: Mm) => [Mm, Mm]): Zone {
  return {
    ...zone,
    shape: mapVertices(zone.shape, map),
    holes: zone.holes.map((hole) => mapVertices(hole, map)),
  };
}

function tidy(length: Mm): Mm {
  return Math.round(length * 100) / 100;
}
