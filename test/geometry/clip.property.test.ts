import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { difference, intersection, offsetMitred, offsetRound, union } from '../../core/geometry/clip';
import {
  distanceToBoundary,
  doubleSignedArea,
  isRectilinear,
  locate,
  perimeter,
  polygonArea,
  rectangle,
  regionArea,
  translate,
  type Polygon,
  type Region,
} from '../../core/geometry/polygon';
import { moved, mirrored, quarterTurned, ringsOf, sameRegion } from './shapes';

const place = fc.integer({ min: -50_000, max: 50_000 });
const size = fc.integer({ min: 1, max: 60_000 });
const boxes = fc.tuple(place, place, size, size).map(([x, y, w, h]) => rectangle(x, y, w, h));
/** Up to six boxes that may overlap, on a coarse grid half of the time so that edges and corners coincide. */
const rectilinear = fc
  .tuple(fc.array(boxes, { minLength: 1, maxLength: 6 }), fc.boolean())
  .map(([all, coarse]) => union(coarse ? all.map(onGrid) : all));
const triangles = fc
  .tuple(place, place, place, place, place, place)
  .map(([ax, ay, bx, by, cx, cy]) => [
    { x: ax, y: ay },
    { x: bx, y: by },
    { x: cx, y: cy },
  ])
  .filter((ring) => Math.abs(doubleSignedArea(ring)) > 1000)
  .map((ring): Polygon => ({ outer: doubleSignedArea(ring) > 0 ? ring : ring.reverse(), holes: [] }));
const sloping = fc.array(triangles, { minLength: 1, maxLength: 4 }).map((all) => union(all));

function onGrid({ outer: [a, , c] }: Polygon): Polygon {
  const on = (length: number) => Math.round(length / 10_000) * 10_000;
  const [x, y] = [on(a!.x), on(a!.y)];
  return rectangle(x, y, Math.max(10_000, on(c!.x) - x), Math.max(10_000, on(c!.y) - y));
}

/** Rings as `Polygon` promises them, and in the one order that equal regions share. */
function expectTidy(region: Region): void {
  for (const { outer, holes } of region) {
    expect(doubleSignedArea(outer)).toBeGreaterThan(0);
    for (const hole of holes) expect(doubleSignedArea(hole)).toBeLessThan(0);
    for (const hole of holes)
      expect(hole.every((point) => locate(point, { outer, holes: [] }) !== 'outside')).toBe(true);
  }
  for (const ring of ringsOf(region)) {
    const straight = ring.filter((point, i) => {
      const before = ring.at(i - 1)!;
      const after = ring[(i + 1) % ring.length]!;
      return (point.x - before.x) * (after.y - point.y) === (point.y - before.y) * (after.x - point.x);
    });
    expect(straight).toEqual([]);
    const [first] = ring;
    expect(ring.every(({ x, y }) => y > first!.y || (y === first!.y && x >= first!.x))).toBe(true);
  }
}

describe('regions of level and upright edges', () => {
  it('inclusion and exclusion hold exactly: |A ∪ B| + |A ∩ B| = |A| + |B|, |A − B| + |A ∩ B| = |A|', () => {
    fc.assert(
      fc.property(rectilinear, rectilinear, (a, b) => {
        const shared = regionArea(intersection(a, b));
        expect(regionArea(union(a, b)) + shared).toBe(regionArea(a) + regionArea(b));
        expect(regionArea(difference(a, b)) + shared).toBe(regionArea(a));
        for (const region of [a, union(a, b), difference(a, b), intersection(a, b)]) {
          expectTidy(region);
          expect(region.every(isRectilinear)).toBe(true);
        }
      }),
      { seed: 21, numRuns: 400 },
    );
  });

  it('moved, mirrored or turned, they give the same result moved, mirrored or turned', () => {
    fc.assert(
      fc.property(rectilinear, rectilinear, place, (a, b, d) => {
        const result = difference(a, b);
        const shift = (region: Region) => region.map((polygon) => translate(polygon, d, -3 * d));
        expect(difference(shift(a), shift(b))).toEqual(shift(result));
        for (const [move, mirrors] of [
          [mirrored, true],
          [quarterTurned, false],
        ] as const) {
          // prettier-ignore
          const there = difference(moved(a, move, mirrors), moved(b, move, mirrors));
          expect(sameRegion(there, moved(result, move, mirrors))).toBe(true);
        }
      }),
      { seed: 22, numRuns: 300 },
    );
  });
});

describe('regions of sloping edges', () => {
  it('add up within a hundredth along their edges, and stay tidy', () => {
    fc.assert(
      fc.property(sloping, sloping, (a, b) => {
        const [less, both] = [difference(a, b), intersection(a, b)];
        const edges = [...less, ...both].reduce((length, polygon) => length + perimeter(polygon), 0);
        expect(Math.abs(regionArea(less) + regionArea(both) - regionArea(a))).toBeLessThanOrEqual(edges + 4);
        expectTidy(less.filter((polygon) => polygonArea(polygon) > 1e4));
      }),
      { seed: 23, numRuns: 400 },
    );
  });

  it('moved, they give the same result moved, to the hundredth', () => {
    fc.assert(
      fc.property(sloping, sloping, place, place, (a, b, dx, dy) => {
        const shift = (region: Region) => region.map((polygon) => translate(polygon, dx, dy));
        expect(difference(shift(a), shift(b))).toEqual(shift(difference(a, b)));
      }),
      { seed: 24, numRuns: 200 },
    );
  });
});

describe('grown regions', () => {
  it('a box grown by d is the box with every side moved by d, and back again', () => {
    fc.assert(
      fc.property(boxes, fc.integer({ min: 1, max: 9000 }), (box, d) => {
        const { outer } = box;
        const grown = rectangle(outer[0]!.x - d, outer[0]!.y - d, outer[1]!.x - outer[0]!.x + 2 * d, outer[2]!.y - outer[1]!.y + 2 * d); // prettier-ignore
        expect(offsetMitred([box], d)).toEqual([grown]);
        expect(offsetMitred([grown], -d)).toEqual([box]);
      }),
      { seed: 25, numRuns: 200 },
    );
  });

  it('a triangle grown round has area A + P d + π d² (Steiner), within its chords', () => {
    fc.assert(
      fc.property(triangles, fc.integer({ min: 100, max: 9000 }), (triangle, d) => {
        const exact = polygonArea(triangle) + perimeter(triangle) * d + Math.PI * d * d;
        const grown = offsetRound([triangle], d);
        const allowed = 3 * (perimeter(triangle) + 2 * Math.PI * d) + 10;
        expect(Math.abs(regionArea(grown) - exact)).toBeLessThan(allowed);
      }),
      { seed: 26, numRuns: 200 },
    );
  });

  it('a mitred corner reaches at most twice as far, and no edge comes nearer than the distance', () => {
    fc.assert(
      fc.property(triangles, fc.integer({ min: 100, max: 9000 }), (triangle, d) => {
        const [grown, ...more] = offsetMitred([triangle], d);
        expect(more).toEqual([]);
        for (const point of grown!.outer) {
          expect(distanceToBoundary(point, triangle)).toBeLessThanOrEqual(2 * d + 2);
        }
        for (const point of triangle.outer) {
          expect(distanceToBoundary(point, grown!)).toBeGreaterThanOrEqual(d - 2);
          expect(locate(point, grown!)).toBe('inside');
        }
      }),
      { seed: 27, numRuns: 200 },
    );
  });
});
