import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { difference, intersection, union } from '../../core/geometry/clip';
import {
  distanceToBoundary,
  distanceToSegment,
  locate,
  regionArea,
  translate,
} from '../../core/geometry/polygon';
import type { Wall } from '../../core/job/schema';
import { sidesOfEdges } from '../../core/survey/sides';
import { surveyWall } from '../../core/survey/survey';
import { mirrored, moved, sameRegion } from '../geometry/shapes';
import { walls } from './random-walls';

/** A rectilinear wall moved, in mm on whole hundredths. */
function shifted(wall: Wall, dx: number, dy: number): Wall {
  const at = (length: number, by: number) => Math.round((length + by) * 100) / 100;
  const move = <T extends { x?: number; y?: number }>(object: T): T => ({
    ...object,
    x: at(object.x!, dx),
    y: at(object.y!, dy),
  });
  return {
    ...wall,
    outline: (wall.outline as [number, number][]).map(([x, y]): [number, number] => [at(x, dx), at(y, dy)]),
    openings: wall.openings.map(move),
    fittings: wall.fittings.map(move),
  };
}

function seenFromBehind(wall: Wall): Wall {
  const flip = <T extends { x?: number; width?: number }>(object: T): T => ({
    ...object,
    x: Math.round((-object.x! - object.width!) * 100) / 100,
  });
  return {
    ...wall,
    outline: (wall.outline as [number, number][]).map(([x, y]): [number, number] => [-x, y]),
    rim: { ...wall.rim, left: wall.rim.right, right: wall.rim.left },
    openings: wall.openings.map(flip),
    fittings: wall.fittings.map(flip),
  };
}

describe('any surveyed wall', () => {
  it('usable and taken away make up the outline, exactly where it is rectilinear', () => {
    fc.assert(
      fc.property(walls({ sloping: false }), (wall) => {
        const { outline, rim, keepOuts, usable } = surveyWall(wall);
        const whole = [{ outer: outline.ring, holes: [] }];
        const taken = union(
          rim.map(({ band }) => band),
          keepOuts.map(({ grown }) => grown),
        );
        expect(regionArea(usable) + regionArea(intersection(whole, taken))).toBe(regionArea(whole));
        expect(intersection(usable, taken)).toEqual([]);
        expect(difference(usable, whole)).toEqual([]);
      }),
      { seed: 31, numRuns: 300 },
    );
  });

  it('moved, its usable part only moves; seen from behind, it is mirrored', () => {
    fc.assert(
      fc.property(walls({ sloping: false }), fc.integer({ min: -9999, max: 9999 }), (wall, d) => {
        const { usable } = surveyWall(wall);
        const there = usable.map((polygon) => translate(polygon, 100 * d, 50 * d));
        expect(surveyWall(shifted(wall, d, d / 2)).usable).toEqual(there);
        expect(sameRegion(surveyWall(seenFromBehind(wall)).usable, moved(usable, mirrored, true))).toBe(true);
      }),
      { seed: 32, numRuns: 300 },
    );
  });

  it('leaves no corner nearer to an opening or fitting than its clearance, nor to an edge than its side’s', () => {
    fc.assert(
      fc.property(walls({ sloping: true }), (drawn) => {
        // Every side has a clearance: a band ends square where the edge round a hollow corner has none.
        const { floor, ceiling, left, right } = drawn.rim;
        const rim = { floor: floor + 1, ceiling: ceiling + 1, left: left + 1, right: right + 1 };
        const wall = { ...drawn, rim };
        const { keepOuts, usable, outline } = surveyWall(wall);
        const placed = [...wall.openings, ...wall.fittings];
        const sides = sidesOfEdges(outline);
        for (const corner of usable.flatMap(({ outer, holes }) => [outer, ...holes].flat())) {
          keepOuts.forEach(({ bare }, i) => {
            const shape = { outer: bare.ring, holes: [] };
            // Two hundredths are for the rounding of sloping edges and of their crossings.
            expect(distanceToBoundary(corner, shape)).toBeGreaterThanOrEqual(placed[i]!.clearance * 100 - 2);
            if (placed[i]!.clearance > 0.02) expect(locate(corner, shape)).toBe('outside');
          });
          outline.ring.forEach((from, i) => {
            const to = outline.ring[(i + 1) % outline.ring.length]!;
            expect(distanceToSegment(corner, from, to)).toBeGreaterThanOrEqual(rim[sides[i]!] * 100 - 2);
          });
        }
      }),
      { seed: 33, numRuns: 200 },
    );
  });
});
