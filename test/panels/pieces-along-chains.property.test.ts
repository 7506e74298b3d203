import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { difference, intersection, union } from '../../core/geometry/clip';
import { perimeter, rectangleOfBox, regionArea, type Box, type Region } from '../../core/geometry/polygon';
import { areaEdges } from '../../core/panels/area-edges';
import { piecesAlongChains } from '../../core/panels/pieces-along-chains';
import { areaOf, slopingPlans } from './random-zones';

describe('cutting a cell along chains of edges', () => {
  it('gives what the clipper gives, but for the rounding of corners', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        slopingPlans,
        fc.integer({ min: -40000, max: 150000 }),
        fc.integer({ min: -40000, max: 120000 }),
        (plan, left, bottom) => {
          const { area } = areaOf(plan, {});
          const cell: Box = { left, bottom, right: left + 50000, top: bottom + 40000 };
          const pieces = piecesAlongChains(areaEdges(area), cell);
          if (!pieces || area.length === 0) return;
          const clipped = intersection(area, [rectangleOfBox(cell)]);
          // Either may round a corner by a hundredth, which tilts the edges beside it.
          const allowed = lengthOf(pieces) + lengthOf(clipped) + 100;
          expect(regionArea(difference(pieces, clipped))).toBeLessThanOrEqual(allowed);
          expect(regionArea(difference(clipped, pieces))).toBeLessThanOrEqual(allowed);
          expect(Math.abs(regionArea(pieces) - regionArea(union(pieces)))).toBeLessThanOrEqual(allowed);
          if (pieces.length > 0) compared++;
        },
      ),
      { numRuns: 400 },
    );
    expect(compared).toBeGreaterThan(100);
  });
});

function lengthOf(region: Region): number {
  return region.reduce((sum, polygon) => sum + perimeter(polygon), 0);
}
