import fc from 'fast-check';
import * as polyclip from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { difference, offsetMitred } from '../../core/geometry/clip';
import { boxOf, polygonArea, regionArea, type Polygon } from '../../core/geometry/polygon';
import type { Layout } from '../../core/job/schema';
import { toHundredth } from '../../core/units';
import { areaOf, rectilinearPlans, slopingPlans, type ZonePlan } from './random-zones';
import { layOut, stockSheet } from './zones-by-hand';

/*
 * Layouts with slivers joined or shared out, held against the same layouts without, and against polyclip-ts, an
 * independent clipping library.
 */

const stock = stockSheet(500, 400);
const changes: fc.Arbitrary<Partial<Layout>> = fc.record({
  jointGap: fc.constantFrom(0, 0, 3.5),
  stagger: fc.constantFrom(0, 0, 0.5, 0.27),
  leastWidth: fc.constantFrom(50, 80.5, 150, 190),
  turned: fc.boolean(),
  start: fc.oneof(
    fc.constantFrom('lower-left', 'upper-right', 'centre-on-joint', 'best'),
    fc.record({ x: fc.integer({ min: -900, max: 900 }), y: fc.integer({ min: -900, max: 900 }) }),
  ) as fc.Arbitrary<Layout['start']>,
});

type Rings = [number, number][][];
const rings = ({ outer, holes }: Polygon): Rings =>
  [outer, ...holes].map((ring) => ring.map(({ x, y }): [number, number] => [x, y]));

function both(plan: ZonePlan, varied: Partial<Layout>) {
  const area = areaOf(plan, varied);
  const plain = layOut(areaOf(plan, { ...varied, redivide: false }), stock);
  const divided = layOut(areaOf(plan, { ...varied, redivide: true }), stock);
  return { area, plain, divided };
}

function sliversIn({ panels }: ReturnType<typeof layOut>): number {
  return panels.filter(({ sliver }) => sliver).length;
}

/** No larger than a stock sheet, laid upright or on its side. */
function comesOutOfOneStockSheet(outline: Polygon): boolean {
  const { left, right, bottom, top } = boxOf(outline.outer);
  const [long, short] = [right - left, top - bottom].sort((a, b) => b - a) as [number, number];
  return long <= toHundredth(500) && short <= toHundredth(400);
}

describe('panels of a rectilinear zone whose slivers are shared out', () => {
  it('tile it exactly without a joint gap, each from one stock sheet, with no more slivers than before', () => {
    let mended = 0;
    fc.assert(
      fc.property(rectilinearPlans, changes, (plan, varied) => {
        const { area, plain, divided } = both(plan, { ...varied, jointGap: 0 });
        expect(sliversIn(divided)).toBeLessThanOrEqual(sliversIn(plain));
        expect(divided.panels.every(({ outline }) => comesOutOfOneStockSheet(outline))).toBe(true);
        mended += sliversIn(plain) - sliversIn(divided);
        const said = divided.findings.filter(({ code }) => code === 'sliver-avoided').length;
        expect(said > 0).toBe(sliversIn(divided) < sliversIn(plain));
        if (divided.panels.length === 0) return;
        expect(regionArea(divided.panels.map(({ outline }) => outline))).toBe(regionArea(area.area));
        const union = polyclip.union(...(divided.panels.map(({ outline }) => rings(outline)) as [Rings]));
        expect(polyclip.xor(union, area.area.map(rings))).toEqual([]);
      }),
      { numRuns: 150, seed: 7 },
    );
    expect(mended).toBeGreaterThan(50);
  });

  it('lie in it without overlap, a joint gap apart', () => {
    fc.assert(
      fc.property(rectilinearPlans, changes, (plan, varied) => {
        const { area, plain, divided } = both(plan, { ...varied, jointGap: 3.5 });
        expect(sliversIn(divided)).toBeLessThanOrEqual(sliversIn(plain));
        if (divided.panels.length === 0) return;
        const grown = divided.panels.map(({ outline }) => outline);
        const union = polyclip.union(...(grown.map(rings) as [Rings]));
        expect(polyclip.difference(union, area.area.map(rings))).toEqual([]);
        expect(areaOfRings(union as Rings[])).toBe(regionArea(grown));
        // What is left between them is nowhere wider than the joint: shrunk by half of it, nothing remains.
        expect(offsetMitred(difference(area.area, grown), -176)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});

describe('panels of a zone with sloping and round edges whose slivers are shared out', () => {
  it('tile it within 0.01 mm along those edges', () => {
    fc.assert(
      fc.property(slopingPlans, changes, (plan, varied) => {
        const { area, plain, divided } = both(plan, { ...varied, jointGap: 0 });
        expect(sliversIn(divided)).toBeLessThanOrEqual(sliversIn(plain));
        expect(divided.panels.every(({ outline }) => comesOutOfOneStockSheet(outline))).toBe(true);
        const sum = divided.panels.reduce((total, { outline }) => total + polygonArea(outline), 0);
        expect(Math.abs(sum - regionArea(area.area))).toBeLessThanOrEqual(slopingLength(area.area));
      }),
      { numRuns: 60 },
    );
  });
});

function areaOfRings(result: Rings[]): number {
  const shoelace = (ring: [number, number][]) =>
    Math.abs(
      ring.reduce((sum, [ax, ay], i) => {
        const [bx, by] = ring[(i + 1) % ring.length]!;
        const [ox, oy] = ring[0]!;
        return sum + (ax - ox) * (by - oy) - (bx - ox) * (ay - oy);
      }, 0) / 2,
    );
  return result.reduce(
    (sum, [outer, ...holes]) =>
      sum + shoelace(outer!) - holes.reduce((total, hole) => total + shoelace(hole), 0),
    0,
  );
}

function slopingLength(region: readonly Polygon[]): number {
  return region
    .flatMap(({ outer, holes }) => [outer, ...holes])
    .reduce(
      (sum, ring) =>
        sum +
        ring.reduce((total, a, i) => {
          const b = ring[(i + 1) % ring.length]!;
          return a.x === b.x || a.y === b.y ? total : total + Math.hypot(b.x - a.x, b.y - a.y);
        }, 0),
      0,
    );
}
