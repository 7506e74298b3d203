import type { Point, Region, Ring } from '../geometry/polygon';
import type { Hundredth } from '../units';

/**
 * Sloping edges that go on from each other without turning back in x or in y: a sloping ceiling, a quarter of a
 * round hole. A level and an upright line each meet it once at most.
 */
export interface SlopingChain {
  /** Ascending in x. */
  readonly points: readonly Point[];
  /** The area lies left of it. */
  readonly facesRight: boolean;
  /** The area lies below it. */
  readonly facesUp: boolean;
}

/** The sloping chains of an area, those that reach farthest first. */
export function slopingChains(area: Region): SlopingChain[] {
  const chains = area.flatMap(({ outer, holes }) => [outer, ...holes].flatMap(chainsOfRing));
  return chains
    .map((chain) => ({ chain, reach: reachOf(chain) }))
    .sort((a, b) => b.reach - a.reach)
    .map(({ chain }) => chain);
}

/** A segment of a chain, and where a line meets it, rounded to the hundredth on which the area lies. */
export interface Meeting {
  readonly at: Hundredth;
  readonly a: Point;
  readonly b: Point;
}

/** Where the upright line at x meets a chain, ends included, as y. */
export function meetUpright({ points, facesUp }: SlopingChain, x: Hundredth): Meeting | undefined {
  if (x < points[0]!.x) return undefined;
  const next = points.findIndex((point, i) => i > 0 && point.x >= x);
  if (next < 0) return undefined;
  const [a, b] = [points[next - 1]!, points[next]!];
  return { at: a.y + roundTo(facesUp, ((b.y - a.y) * (x - a.x)) / (b.x - a.x)), a, b };
}

/** Where the level line at y meets a chain, ends included, as x. */
export function meetLevel({ points, facesRight }: SlopingChain, y: Hundredth): Meeting | undefined {
  for (let next = 1; next < points.length; next++) {
    const [a, b] = [points[next - 1]!, points[next]!];
    if (y < Math.min(a.y, b.y) || y > Math.max(a.y, b.y)) continue;
    return { at: a.x + roundTo(facesRight, ((b.x - a.x) * (y - a.y)) / (b.y - a.y)), a, b };
  }
  return undefined;
}

function roundTo(down: boolean, value: number): number {
  return down ? Math.floor(value) : Math.ceil(value);
}

function reachOf({ points }: SlopingChain): number {
  const [first, last] = [points[0]!, points.at(-1)!];
  return last.x - first.x + Math.abs(last.y - first.y);
}

function chainsOfRing(ring: Ring): SlopingChain[] {
  const directions = ring.map((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return a.x === b.x || a.y === b.y ? 0 : (b.x > a.x ? 1 : 3) + (b.y > a.y ? 1 : 0);
  });
  // Begin where the direction changes, so that no chain is cut in two; it never does in a ring without slopes.
  const first = directions.findIndex((direction, i) => direction !== directions.at(i - 1));
  if (first < 0) return [];
  const chains: SlopingChain[] = [];
  for (let n = 0; n < ring.length;) {
    const direction = directions[(first + n) % ring.length]!;
    const points = [ring[(first + n) % ring.length]!];
    do points.push(ring[(first + ++n) % ring.length]!);
    while (n < ring.length && directions[(first + n) % ring.length] === direction);
    if (direction === 0) continue;
    // The area lies left of every edge.
    const facesUp = direction >= 3;
    const facesRight = direction === 2 || direction === 4;
    chains.push({ points: facesUp ? points.reverse() : points, facesRight, facesUp });
  }
  return chains;
}
