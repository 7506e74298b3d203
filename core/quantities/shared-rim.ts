import type { Polygon, Region, Ring } from '../geometry/polygon';

/** Rounding of two sloping edges may part them by this much, hundredths. */
const TOLERANCE = 2;

/**
 * How much of the rim of a region runs along the rims of others, hundredths. Exact where edges are level or upright.
 *
 * @param others share no area with each other, or what they have in common is counted twice
 */
export function rimShared(region: Region, others: Region): number {
  const beside = others.flatMap(ringsOf);
  return region.flatMap(ringsOf).reduce((sum, ring) => sum + ringShared(ring, beside), 0);
}

function ringsOf({ outer, holes }: Polygon): readonly Ring[] {
  return [outer, ...holes];
}

function ringShared(ring: Ring, others: readonly Ring[]): number {
  let shared = 0;
  ring.forEach((from, i) => {
    const to = ring[(i + 1) % ring.length]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
    for (const other of others) {
      other.forEach((a, k) => {
        const b = other[(k + 1) % other.length]!;
        const along = (x: number, y: number) => (x - from.x) * ux + (y - from.y) * uy;
        const aside = (x: number, y: number) => (y - from.y) * ux - (x - from.x) * uy;
        const [offA, offB] = [aside(a.x, a.y), aside(b.x, b.y)];
        if (Math.abs(offA) > TOLERANCE && Math.abs(offB) > TOLERANCE && offA > 0 === offB > 0) return;
        shared += overlap(along(a.x, a.y), offA, along(b.x, b.y), offB, length);
      });
    }
  });
  return shared;
}

/** Of the stretch 0 … length what lies beside an edge, whose ends are given along and across it. */
function overlap(a: number, offA: number, b: number, offB: number, length: number): number {
  const start = Math.max(0, Math.min(a, b));
  const end = Math.min(length, Math.max(a, b));
  if (end <= start) return 0;
  const offAt = (t: number) => offA + ((offB - offA) * (t - a)) / (b - a);
  return Math.abs(offAt(start)) > TOLERANCE || Math.abs(offAt(end)) > TOLERANCE ? 0 : end - start;
}
