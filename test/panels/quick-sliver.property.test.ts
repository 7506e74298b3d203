import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flattenCircle } from '../../core/geometry/arc';
import { difference } from '../../core/geometry/clip';
import { isRectilinear, type Polygon } from '../../core/geometry/polygon';
import { lostToSquare } from '../../core/panels/lost-to-square';
import { piecesOfGrid } from '../../core/panels/pieces-of-grid';
import { quickSliver } from '../../core/panels/quick-sliver';
import { mmPolygon, mmRectangle } from './zones-by-hand';

const across = fc.integer({ min: -50, max: 1300 });
const rectangles = fc.tuple(
  across,
  across,
  fc.integer({ min: 10, max: 600 }),
  fc.integer({ min: 10, max: 600 }),
);
const circles = fc
  .record({ x: across, y: across, diameter: fc.integer({ min: 4, max: 700 }) })
  .map(({ x, y, diameter }): Polygon => ({
    outer: flattenCircle({ x, y }, diameter, 'circumscribed').ring,
    holes: [],
  }));
/** Notches and holes with three to five sloping sides. */
const splinters = fc
  .record({
    x: across,
    y: across,
    turn: fc.double({ min: 0, max: 6.28, noNaN: true }),
    reaches: fc.array(fc.integer({ min: 5, max: 300 }), { minLength: 3, maxLength: 5 }),
  })
  .map(({ x, y, turn, reaches }) =>
    mmPolygon(
      reaches.map((reach, i) => {
        const angle = turn + (i * 2 * Math.PI) / reaches.length;
        return [x + reach * Math.cos(angle), y + reach * Math.sin(angle)] as const;
      }),
    ),
  );

const cutWalls = fc
  .record({
    width: fc.integer({ min: 300, max: 1300 }),
    left: fc.integer({ min: 200, max: 1300 }),
    right: fc.integer({ min: 200, max: 1300 }),
    start: fc.record({ x: fc.integer({ min: 0, max: 50000 }), y: fc.integer({ min: 0, max: 40000 }) }),
    rectangles: fc.array(rectangles, { maxLength: 2 }),
    circles: fc.array(circles, { maxLength: 3 }),
    splinters: fc.array(splinters, { maxLength: 2 }),
  })
  .map((plan) => {
    const wall = mmPolygon([
      [0, 0],
      [plan.width, 0],
      [plan.width, plan.right],
      [0, plan.left],
    ]);
    const taken = [...plan.rectangles.map(mmRectangle), ...plan.circles, ...plan.splinters];
    const area = difference([wall], taken);
    const size = { width: 50000, height: 40000, pitchX: 50000, pitchY: 40000, stagger: 0 };
    return piecesOfGrid(area, { ...size, start: plan.start }).map(({ polygon }) => polygon);
  });

describe('the quick answer for panels with sloping and round edges', () => {
  it('is what opening by clipping says, wherever it answers, and it nearly always does', () => {
    let undecided = 0;
    let slivers = 0;
    let asked = 0;
    fc.assert(
      fc.property(cutWalls, fc.constantFrom(1000, 3000, 5000, 8050), (panels, leastWidth) => {
        for (const panel of panels) {
          if (isRectilinear(panel)) continue;
          asked++;
          const quick = quickSliver(panel, leastWidth);
          if (quick === undefined) undecided++;
          else expect(quick).toBe(lostToSquare(panel, leastWidth) !== null);
          if (quick) slivers++;
        }
      }),
      { numRuns: 150 },
    );
    expect(slivers).toBeGreaterThan(50);
    expect(undecided).toBeLessThan(asked / 10);
  });
});
