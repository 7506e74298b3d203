import fc from 'fast-check';
import type { Polygon } from '../../core/geometry/polygon';
import type { Layout } from '../../core/job/schema';
import type { ZoneArea } from '../../core/zones/zone-area';
import { mmPolygon, mmRectangle, zoneArea, type MmRectangle } from './zones-by-hand';

/** A zone as plain data, so that a test can move and mirror it. */
export interface ZonePlan {
  readonly shape: readonly (readonly [number, number])[];
  readonly openings: readonly MmRectangle[];
  readonly holes: readonly { readonly x: number; readonly y: number; readonly radius: number }[];
}

const opening = fc.tuple(
  fc.integer({ min: -100, max: 1700 }),
  fc.integer({ min: -100, max: 1300 }),
  fc.integer({ min: 30, max: 700 }),
  fc.integer({ min: 30, max: 600 }),
);

/** A rectangle with up to four openings, edges on whole millimetres. */
export const rectilinearPlans: fc.Arbitrary<ZonePlan> = fc
  .tuple(
    fc.integer({ min: 200, max: 2000 }),
    fc.integer({ min: 200, max: 1500 }),
    fc.array(opening, { maxLength: 4 }),
  )
  .map(([width, height, openings]) => ({
    shape: [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ],
    openings,
    holes: [],
  }));

/** A wall under a slope, with openings and round holes. */
export const slopingPlans: fc.Arbitrary<ZonePlan> = fc
  .record({
    width: fc.integer({ min: 400, max: 2000 }),
    left: fc.integer({ min: 200, max: 1500 }),
    right: fc.integer({ min: 200, max: 1500 }),
    openings: fc.array(opening, { maxLength: 2 }),
    holes: fc.array(
      fc.record({
        x: fc.integer({ min: 0, max: 1500 }),
        y: fc.integer({ min: 0, max: 1000 }),
        radius: fc.integer({ min: 20, max: 80 }),
      }),
      { maxLength: 2 },
    ),
  })
  .map(({ width, left, right, openings, holes }) => ({
    shape: [
      [0, 0],
      [width, 0],
      [width, right],
      [0, left],
    ],
    openings,
    holes,
  }));

export const layouts: fc.Arbitrary<Partial<Layout>> = fc.record({
  jointGap: fc.constantFrom(0, 0, 2, 3.5),
  stagger: fc.constantFrom(0, 0, 0.5, 1 / 3, 0.27),
  leastWidth: fc.constantFrom(0, 30, 50, 80.5),
  turned: fc.boolean(),
});

export function areaOf(plan: ZonePlan, changes: Partial<Layout>, dx = 0, dy = 0, mirrored = false): ZoneArea {
  const at = (x: number) => (mirrored ? -x : x) + dx;
  const shape = mmPolygon(plan.shape.map(([x, y]) => [at(x), y + dy]));
  const openings = plan.openings.map(([x, y, width, height]) =>
    mmRectangle([mirrored ? at(x + width) : at(x), y + dy, width, height]),
  );
  const holes = plan.holes.map(({ x, y, radius }) => roundHole(at(x), y + dy, radius));
  return zoneArea(
    mirrored ? { outer: [...shape.outer].reverse(), holes: [] } : shape,
    [...openings, ...holes],
    changes,
  );
}

function roundHole(x: number, y: number, radius: number): Polygon {
  const corners = 24;
  return mmPolygon(
    Array.from({ length: corners }, (_, n) => {
      const angle = (2 * Math.PI * n) / corners;
      return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)] as const;
    }),
  );
}
