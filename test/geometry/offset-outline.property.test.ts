import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flattenVertices, type OutlineVertex } from '../../core/geometry/arc';
import { difference } from '../../core/geometry/clip';
import { offsetOutline } from '../../core/geometry/offset-outline';
import { distanceToBoundary, locate, perimeter, polygonArea, regionArea } from '../../core/geometry/polygon';
import { verticesOfRing } from '../../core/geometry/ring-arcs';

/** Star-shaped about a point, so that no edge meets another; some edges bent to arcs of a small rise. */
const shape = fc
  .array(fc.record({ reach: fc.integer({ min: 400, max: 3000 }), bend: fc.constantFrom(0, 0, 1, -1) }), {
    minLength: 4,
    maxLength: 9,
  })
  .map((rays): OutlineVertex[] => {
    const points = rays.map(({ reach }, i) => {
      const angle = (2 * Math.PI * i) / rays.length;
      return [Math.round(reach * Math.cos(angle)), Math.round(reach * Math.sin(angle))] as const;
    });
    return points.map((to, i): OutlineVertex => {
      const from = points.at(i - 1)!;
      const { bend } = rays[i]!;
      if (bend === 0) return to;
      const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
      const rise = 0.06 * bend;
      return { arcTo: to, via: [(from[0] + to[0]) / 2 + dy * rise, (from[1] + to[1]) / 2 - dx * rise] };
    });
  })
  .filter((vertices) => isSimple(vertices));

function isSimple(vertices: OutlineVertex[]): boolean {
  const { ring } = flattenVertices(vertices, 'inscribed');
  const region = difference([{ outer: ring, holes: [] }]);
  return region.length === 1 && Math.abs(regionArea(region) - polygonArea({ outer: ring, holes: [] })) < 1;
}

const distance = fc.integer({ min: 100, max: 60_000 });
/** Chords and rounding, hundredths. */
const slack = 4;

describe('for any outline', () => {
  it('every point of the new edge is as far from the old one as it was asked, and at a corner at most twice as far', () => {
    fc.assert(
      fc.property(shape, distance, fc.boolean(), (vertices, far, grows) => {
        const outline = flattenVertices(vertices, 'inscribed');
        const own = { outer: outline.ring, holes: [] };
        const { region } = offsetOutline(outline, grows ? far : -far);
        for (const { outer, holes } of region) {
          for (const ring of [outer, ...holes]) {
            ring.forEach((a, i) => {
              const b = ring[(i + 1) % ring.length]!;
              for (const at of [a, { x: Math.round((a.x + b.x) / 2), y: Math.round((a.y + b.y) / 2) }]) {
                const off = distanceToBoundary(at, own);
                expect(off).toBeGreaterThanOrEqual(far - slack);
                expect(off).toBeLessThanOrEqual(2 * far + slack);
                expect(locate(at, own)).toBe(grows ? 'outside' : 'inside');
              }
            });
          }
        }
        if (grows) expect(regionArea(difference([own], region))).toBe(0);
        else expect(regionArea(difference(region, [own]))).toBe(0);
      }),
      { numRuns: 150 },
    );
  });

  it('drawn with arcs again, a ring is where it was, and arcs are arcs', () => {
    fc.assert(
      fc.property(shape, fc.integer({ min: 100, max: 20_000 }), fc.boolean(), (vertices, far, grows) => {
        const outline = flattenVertices(vertices, 'inscribed');
        const { region, circles } = offsetOutline(outline, grows ? far : -far);
        for (const polygon of region) {
          for (const ring of [polygon.outer, ...polygon.holes.map((hole) => [...hole].reverse())]) {
            const drawn = verticesOfRing(ring, circles);
            const again = { outer: flattenVertices(drawn, 'inscribed').ring, holes: [] };
            const as = { outer: ring, holes: [] };
            const apart = regionArea(difference([again], [as])) + regionArea(difference([as], [again]));
            expect(apart).toBeLessThanOrEqual(5 * perimeter(as));
            // No run of short chords is left where an arc was.
            if (outline.arcs.length > 0) expect(drawn.length).toBeLessThan(80);
          }
        }
      }),
      { numRuns: 120 },
    );
  });
});
