import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { perimeter, rectangle, regionArea, type Polygon } from '../../core/geometry/polygon';
import type { Wall } from '../../core/job/schema';
import { surveyWall } from '../../core/survey/survey';
import { areaOf, geometryOf, less } from './polyclip';
import { walls } from './random-walls';

const hundredths = (length: number) => Math.round(length * 100);

/** The rim of a rectilinear wall by hand: a box along each edge, and one in each hollow corner. */
function boxesAlongEdges(wall: Wall): Polygon[] {
  const points = (wall.outline as [number, number][]).map(([x, y]) => ({
    x: hundredths(x),
    y: hundredths(y),
  }));
  const area = points.reduce((sum, a, i) => {
    const b = points[(i + 1) % points.length]!;
    return sum + a.x * b.y - b.x * a.y;
  }, 0);
  if (area < 0) points.reverse();
  const edges = points.map((a, i) => {
    const b = points[(i + 1) % points.length]!;
    const [dx, dy] = [Math.sign(b.x - a.x), Math.sign(b.y - a.y)];
    const side = dy > 0 ? 'right' : dy < 0 ? 'left' : dx > 0 ? 'floor' : 'ceiling';
    return { a, b, dx, dy, clearance: hundredths(wall.rim[side]) };
  });
  const box = (xs: number[], ys: number[]) =>
    rectangle(
      Math.min(...xs),
      Math.min(...ys),
      Math.max(...xs) - Math.min(...xs),
      Math.max(...ys) - Math.min(...ys),
    );
  return edges
    .flatMap(({ a, b, dx, dy, clearance }, i) => {
      const next = edges[(i + 1) % edges.length]!;
      const along = box([a.x, b.x - dy * clearance], [a.y, b.y + dx * clearance]);
      const hollow = dx * next.dy - dy * next.dx < 0;
      if (!hollow) return [along];
      const x = b.x - dy * clearance - next.dy * next.clearance;
      const y = b.y + dx * clearance + next.dx * next.clearance;
      return [along, box([b.x, x], [b.y, y])];
    })
    .filter(({ outer }) => outer[0]!.x < outer[1]!.x && outer[1]!.y < outer[2]!.y);
}

function grownByHand({ x, y, width, height, clearance }: Wall['openings'][number]): Polygon {
  const c = hundredths(clearance);
  const [left, bottom] = [hundredths(x!) - c, hundredths(y!) - c];
  return rectangle(left, bottom, hundredths(x! + width!) + c - left, hundredths(y! + height!) + c - bottom);
}

describe('the usable part of random walls against polyclip-ts 0.16.8', () => {
  it('1,200 stepped walls: equal areas to the square hundredth, from figures worked out by hand', () => {
    fc.assert(
      fc.property(walls({ sloping: false }), (wall) => {
        const { outline, usable } = surveyWall(wall);
        const taken = [...boxesAlongEdges(wall), ...[...wall.openings, ...wall.fittings].map(grownByHand)];
        const expected = areaOf(
          less(geometryOf({ outer: outline.ring, holes: [] }), ...taken.map(geometryOf)),
        );
        expect(regionArea(usable)).toBe(expected);
      }),
      { seed: 1, numRuns: 1200 },
    );
  });

  it('600 walls with slopes and free shapes: within a hundredth along every edge', () => {
    fc.assert(
      fc.property(walls({ sloping: true }), (wall) => {
        const { outline, rim, keepOuts, usable } = surveyWall(wall);
        const whole = { outer: outline.ring, holes: [] };
        const taken = [...rim.map(({ band }) => band), ...keepOuts.map(({ grown }) => grown)];
        const expected = areaOf(less(geometryOf(whole), ...taken.map(geometryOf)));
        const edges = usable.reduce((length, polygon) => length + perimeter(polygon), 0);
        expect(Math.abs(regionArea(usable) - expected)).toBeLessThanOrEqual(edges + 4);
      }),
      { seed: 2, numRuns: 600 },
    );
  });
});
