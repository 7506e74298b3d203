import fc from 'fast-check';
import * as polyclip from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { boxOf, polygonArea, regionArea, type Polygon } from '../../../core/geometry/polygon';
import type { Layout } from '../../../core/job/schema';
import type { HandWish } from '../../../core/panels/by-hand/hand-wishes';
import { neighboursOf, pointWithin } from '../../../core/panels/by-hand/neighbours';
import { toHundredth } from '../../../core/units';
import { areaOf, rectilinearPlans, slopingPlans } from '../random-zones';
import { layOut, stockSheet } from '../zones-by-hand';

/*
 * Panels split and joined by hand wherever chance has it, held against polyclip-ts, an independent clipping library:
 * together they are still the zone, and each comes out of one stock sheet.
 */

const stock = stockSheet(500, 400);
const changes: fc.Arbitrary<Partial<Layout>> = fc.record({
  stagger: fc.constantFrom(0, 0, 0.5, 0.27),
  redivide: fc.boolean(),
  start: fc.record({ x: fc.integer({ min: -900, max: 900 }), y: fc.integer({ min: -900, max: 900 }) }),
});
/** Which panel of those there are, and where in it or with which of its neighbours. */
const picks = fc.array(
  fc.record({
    panel: fc.double({ min: 0, max: 0.999, noNaN: true }),
    kind: fc.constantFrom('split', 'join'),
    axis: fc.constantFrom('x', 'y'),
    side: fc.constantFrom('left', 'right', 'below', 'above'),
  }),
  { minLength: 1, maxLength: 6 },
);

type Rings = [number, number][][];
const rings = ({ outer, holes }: Polygon): Rings =>
  [outer, ...holes].map((ring) => ring.map(({ x, y }): [number, number] => [x, y]));

function comesOutOfOneStockSheet(outline: Polygon): boolean {
  const { left, right, bottom, top } = boxOf(outline.outer);
  const [long, short] = [right - left, top - bottom].sort((a, b) => b - a) as [number, number];
  return long <= toHundredth(500) && short <= toHundredth(400);
}

type Picks = typeof picks extends fc.Arbitrary<infer Value> ? Value : never;

/** Each choice is made on the panels as those before it left them, as a hand does. */
function choose(area: ReturnType<typeof areaOf>, picked: Picks, gap: number): HandWish[] {
  const wishes: HandWish[] = [];
  for (const [i, { panel, kind, axis, side }] of picked.entries()) {
    const { panels } = layOut(area, stock, wishes);
    const own = panels[Math.floor(panel * panels.length)];
    if (!own) break;
    const at = pointWithin(own.outline);
    const other = neighboursOf(panels, own, toHundredth(gap))[side];
    if (kind === 'split') wishes.push({ id: `H${i}`, kind, axis, at });
    else if (other) wishes.push({ id: `H${i}`, kind: 'join', at, with: pointWithin(other.outline) });
  }
  return wishes;
}

describe('panels split and joined by hand', () => {
  it('tile a rectilinear zone exactly, each from one stock sheet and with a mark of its own', () => {
    const made = { split: 0, join: 0 };
    fc.assert(
      fc.property(rectilinearPlans, changes, picks, (plan, varied, picked) => {
        const area = areaOf(plan, varied);
        const wishes = choose(area, picked, 0);
        const { panels, byHand = [], fixing } = layOut(area, stock, wishes);
        for (const { wish, state } of byHand) {
          if (state === 'met') made[wish.kind as 'split' | 'join']++;
        }
        if (panels.length === 0) return;
        expect(panels.every(({ outline }) => comesOutOfOneStockSheet(outline))).toBe(true);
        expect(new Set(panels.map(({ mark }) => mark)).size).toBe(panels.length);
        expect([...fixing.order].sort()).toEqual(panels.map(({ mark }) => mark).sort());
        expect(regionArea(panels.map(({ outline }) => outline))).toBe(regionArea(area.area));
        const union = polyclip.union(...(panels.map(({ outline }) => rings(outline)) as [Rings]));
        expect(polyclip.xor(union, area.area.map(rings))).toEqual([]);
      }),
      { numRuns: 60, seed: 11 },
    );
    expect(made.split).toBeGreaterThan(40);
    expect(made.join).toBeGreaterThan(5);
  });

  it('lie in it without overlap with a joint gap, and lose no more than the joints of the splits', () => {
    fc.assert(
      fc.property(rectilinearPlans, changes, picks, (plan, varied, picked) => {
        const area = areaOf(plan, { ...varied, jointGap: 3.5 });
        const { panels } = layOut(area, stock, choose(area, picked, 3.5));
        if (panels.length === 0) return;
        expect(panels.every(({ outline }) => comesOutOfOneStockSheet(outline))).toBe(true);
        const union = polyclip.union(...(panels.map(({ outline }) => rings(outline)) as [Rings]));
        expect(polyclip.difference(union, area.area.map(rings))).toEqual([]);
        const overlaps = panels.flatMap(({ outline }, i) =>
          panels
            .slice(i + 1)
            .filter((other) => polyclip.intersection(rings(outline), rings(other.outline)).length > 0),
        );
        expect(overlaps).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  it('tile a zone under a slope within 0.01 mm along its sloping edges', () => {
    fc.assert(
      fc.property(slopingPlans, changes, picks, (plan, varied, picked) => {
        const area = areaOf(plan, varied);
        const { panels } = layOut(area, stock, choose(area, picked, 0));
        expect(panels.every(({ outline }) => comesOutOfOneStockSheet(outline))).toBe(true);
        const sum = panels.reduce((total, { outline }) => total + polygonArea(outline), 0);
        expect(Math.abs(sum - regionArea(area.area))).toBeLessThanOrEqual(slopingLength(area.area));
      }),
      { numRuns: 25 },
    );
  });
});

function slopingLength(region: readonly Polygon[]): number {
  let length = 0;
  for (const { outer, holes } of region) {
    for (const ring of [outer, ...holes]) {
      ring.forEach((a, i) => {
        const b = ring[(i + 1) % ring.length]!;
        if (a.x !== b.x && a.y !== b.y) length += Math.hypot(b.x - a.x, b.y - a.y);
      });
    }
  }
  return length;
}
