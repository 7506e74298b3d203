import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { perimeter, polygonArea } from '../../../core/geometry/polygon';
import { cutPatterns } from '../../../core/drawings/cut-patterns';
import { toDxf } from '../../../core/drawings/workshop/dxf';
import { patternDrawings } from '../../../core/drawings/workshop/pattern-drawing';
import { areaOfRead, readDxf } from './read-drawing';
import { randomWorkshopJob } from './round-walls';

describe('cutting patterns of random walls, read back by dxf-parser', () => {
  it('hold the area of their panels, within 0.06 mm of the length of their edges', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const worked = randomWorkshopJob(seed);
        const { patterns } = cutPatterns(worked);
        const drawings = patternDrawings(worked);
        expect(drawings).toHaveLength(patterns.length);
        patterns.forEach(({ drawn }, i) => {
          const outlines = drawn.placements.map(({ outline }) => outline);
          const rings = readDxf(toDxf(drawings[i]!)).contours.filter(({ layer }) => layer === 'CUT');
          let at = 0;
          for (const outline of outlines) {
            const [outer, ...holes] = rings.slice(at, (at += 1 + outline.holes.length)).map(areaOfRead);
            const area = outer! - holes.reduce((sum, hole) => sum + hole, 0);
            const off = Math.abs(area - polygonArea(outline) / 1e4);
            expect(off).toBeLessThanOrEqual(1e-3 + (0.06 * perimeter(outline)) / 100);
          }
          expect(at).toBe(rings.length);
        });
      }),
      { numRuns: 25 },
    );
  }, 120_000);
});
