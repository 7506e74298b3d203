import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { perimeter, regionArea } from '../../core/geometry/polygon';
import { surveyWall } from '../../core/survey/survey';
import { zoneAreas } from '../../core/zones/zone-areas';
import { areaOf, both, geometryOf, less, toGeometry } from '../survey/polyclip';
import { walls } from '../survey/random-walls';

describe('the areas of zones of random walls against polyclip-ts 0.16.8', () => {
  it.each([
    ['400 stepped walls: equal to the square hundredth', false, 400, 0],
    ['200 walls with slopes: within a hundredth along every edge', true, 200, 1],
  ] as const)('%s', (_, sloping, numRuns, perLength) => {
    fc.assert(
      fc.property(walls({ sloping }), (wall) => {
        const survey = surveyWall(wall);
        const areas = zoneAreas(survey);
        areas.forEach(({ area, shapePolygon }, i) => {
          const earlier = areas.slice(0, i).map((other) => geometryOf(other.shapePolygon));
          const expected = areaOf(
            less(both(toGeometry(survey.usable), geometryOf(shapePolygon)), ...earlier),
          );
          const edges = area.reduce((length, polygon) => length + perimeter(polygon), 0);
          expect(Math.abs(regionArea(area) - expected)).toBeLessThanOrEqual(perLength * (edges + 4));
        });
      }),
      { seed: 41, numRuns },
    );
  });
});
