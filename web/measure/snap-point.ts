import type { Wall } from '../../core/job/schema';
import { allObjects } from '../../core/job/several';
import { findObject, type MmPoint } from '../../core/job/shape';
import { nameOfObject } from '../job/changes/names';
import { polygonOf, polygonOfVertices } from '../elevation/rings';
import type { Ring } from '../../core/geometry/polygon';

/** A point that was found near where a hand points, and what it is. */
export interface FoundPoint extends MmPoint {
  readonly words: string;
}

/**
 * The corner, middle of an edge or point of an edge of the wall and its objects that is nearest to a point: a corner
 * before a middle before an edge. Null where nothing is within `reach`, mm.
 */
export function pointNear(wall: Wall, at: MmPoint, reach: number): FoundPoint | null {
  const shapes = [
    { ring: polygonOfVertices(wall.outline).outer, name: 'the wall' },
    ...allObjects(wall).map((ref) => ({
      ring: polygonOf(findObject(wall, ref)!).outer,
      name: nameOfObject(wall, ref),
    })),
  ];
  const found = shapes.flatMap(({ ring, name }) => candidates(ring, name, at));
  const ranks = ['corner', 'middle', 'edge'] as const;
  for (const rank of ranks) {
    let best: (typeof found)[number] | null = null;
    for (const one of found) {
      if (one.rank !== rank || one.distance > reach) continue;
      if (!best || one.distance < best.distance) best = one;
    }
    if (best) return { x: best.x, y: best.y, words: best.words };
  }
  return null;
}

function candidates(ring: Ring, name: string, at: MmPoint) {
  return ring.flatMap((corner, i) => {
    const next = ring[(i + 1) % ring.length]!;
    const [a, b] = [
      { x: corner.x / 100, y: corner.y / 100 },
      { x: next.x / 100, y: next.y / 100 },
    ];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const along = length === 0 ? 0 : ((at.x - a.x) * (b.x - a.x) + (at.y - a.y) * (b.y - a.y)) / length ** 2;
    const on = between(a, b, Math.max(0, Math.min(1, along)));
    const edge = { rank: 'edge' as const, words: `the edge of ${name}`, ...on };
    // The many short edges of an arc have neither corners nor middles that anyone would measure to.
    const isShort = length < 20 && ring.length > 8;
    const all = isShort
      ? [edge]
      : [
          { rank: 'corner' as const, words: `a corner of ${name}`, ...a },
          { rank: 'middle' as const, words: `the middle of an edge of ${name}`, ...between(a, b, 0.5) },
          edge,
        ];
    return all.map((one) => ({ ...one, distance: Math.hypot(one.x - at.x, one.y - at.y) }));
  });
}

function between(a: MmPoint, b: MmPoint, share: number): MmPoint {
  const tidy = (length: number) => Math.round(length * 100) / 100;
  return { x: tidy(a.x + (b.x - a.x) * share), y: tidy(a.y + (b.y - a.y) * share) };
}
