import fc from 'fast-check';
import * as polyclip from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import {
  boxOf,
  polygonArea,
  regionArea,
  type Polygon,
  type Region,
  type Ring,
} from '../../core/geometry/polygon';
import type { Layout } from '../../core/job/schema';
import { modulo } from '../../core/panels/grid';
import type { ZoneLayout } from '../../core/panels/panel';
import { toHundredth } from '../../core/units';
import type { ZoneArea } from '../../core/zones/zone-area';
import { areaOf, layouts, rectilinearPlans, slopingPlans, type ZonePlan } from './random-zones';
import { layOut, stockSheet } from './zones-by-hand';

/*
 * Panels are held against polyclip-ts, an independent clipping library: what it finds between panels, outside
 * the zone's area or left over must be nothing.
 */

const stock = stockSheet(500, 400);
const picked = fc.record({
  x: fc.integer({ min: -900, max: 900 }),
  y: fc.integer({ min: -900, max: 900 }),
});
const starts = fc.oneof(
  picked,
  fc.constantFrom('lower-left', 'upper-right', 'centre-on-joint', 'centre-on-panel'),
) as fc.Arbitrary<Layout['start']>;

type Rings = [number, number][][];
const rings = ({ outer, holes }: Polygon): Rings =>
  [outer, ...holes].map((ring) => ring.map(({ x, y }): [number, number] => [x, y]));
const multi = (region: Region): Rings[] => region.map(rings);
const areaOfResult = (result: Rings[]) =>
  result.reduce(
    (sum, [outer, ...holes]) =>
      sum + Math.abs(shoelace(outer!)) - holes.reduce((total, hole) => total + Math.abs(shoelace(hole)), 0),
    0,
  );
function shoelace(ring: readonly (readonly [number, number])[]): number {
  const [ox, oy] = ring[0]!;
  return (
    ring.reduce((sum, [ax, ay], i) => {
      const [bx, by] = ring[(i + 1) % ring.length]!;
      return sum + (ax - ox) * (by - oy) - (bx - ox) * (ay - oy);
    }, 0) / 2
  );
}

function laid(plan: ZonePlan, changes: Partial<Layout>): { area: ZoneArea; layout: ZoneLayout } {
  const area = areaOf(plan, changes);
  return { area, layout: layOut(area, stock) };
}

function slopingLength(region: Region): number {
  const ofRing = (ring: Ring) =>
    ring.reduce((sum, a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      return a.x === b.x || a.y === b.y ? sum : sum + Math.hypot(b.x - a.x, b.y - a.y);
    }, 0);
  return region.reduce(
    (sum, { outer, holes }) => sum + [outer, ...holes].reduce((total, ring) => total + ofRing(ring), 0),
    0,
  );
}

function inGrid(layout: ZoneLayout, changes: Partial<Layout>): void {
  const [width, height] = changes.turned ? [400, 500] : [500, 400];
  for (const { cell, outline, course, full } of layout.panels) {
    const box = boxOf(outline.outer);
    expect(box.left).toBeGreaterThanOrEqual(cell.x);
    expect(box.bottom).toBeGreaterThanOrEqual(cell.y);
    expect(box.right).toBeLessThanOrEqual(cell.x + toHundredth(width));
    expect(box.top).toBeLessThanOrEqual(cell.y + toHundredth(height));
    expect(full).toBe(polygonArea(outline) === toHundredth(width) * toHundredth(height));
    const gap = changes.jointGap ?? 0;
    expect(cell.y).toBe(layout.start.y + course * toHundredth(height + gap));
    const shift = course * (changes.stagger ?? 0) * width;
    const off = modulo(cell.x - layout.start.x - toHundredth(shift), toHundredth(width + gap));
    expect(Math.min(off, toHundredth(width + gap) - off)).toBeLessThanOrEqual(1);
  }
}

describe('panels of a rectilinear zone', () => {
  it('tile its area to the last hundredth where there is no joint gap', () => {
    fc.assert(
      fc.property(rectilinearPlans, layouts, starts, (plan, varied, start) => {
        const changes = { ...varied, start, jointGap: 0 };
        const { area, layout } = laid(plan, changes);
        expect(regionArea(layout.panels.map(({ outline }) => outline))).toBe(regionArea(area.area));
        inGrid(layout, changes);
        if (layout.panels.length === 0) return;
        const union = polyclip.union(...(layout.panels.map(({ outline }) => rings(outline)) as [Rings]));
        // As much in all as one by one: none overlap. And nothing is left over or sticks out.
        expect(areaOfResult(union as Rings[])).toBe(regionArea(area.area));
        expect(polyclip.xor(union, multi(area.area))).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it('tile it together with the joints between them', () => {
    fc.assert(
      fc.property(rectilinearPlans, layouts, starts, (plan, varied, start) => {
        const changes = { ...varied, start, jointGap: 3.5 };
        const { area, layout } = laid(plan, changes);
        inGrid(layout, changes);
        if (layout.panels.length === 0) return;
        const union = polyclip.union(...(layout.panels.map(({ outline }) => rings(outline)) as [Rings]));
        expect(areaOfResult(union as Rings[])).toBe(
          layout.panels.reduce((sum, { outline }) => sum + polygonArea(outline), 0),
        );
        expect(polyclip.difference(union, multi(area.area))).toEqual([]);
        // What no panel covers lies in a joint: no point of it is inside a cell.
        const cells = layout.panels.map(({ cell }): Rings => {
          const [width, height] = changes.turned ? [40000, 50000] : [50000, 40000];
          return [
            [
              [cell.x, cell.y],
              [cell.x + width, cell.y],
              [cell.x + width, cell.y + height],
              [cell.x, cell.y + height],
            ],
          ];
        });
        const open = polyclip.difference(multi(area.area), union);
        expect(
          areaOfResult(polyclip.intersection(open, polyclip.union(...(cells as [Rings]))) as Rings[]),
        ).toBe(0);
      }),
      { numRuns: 80 },
    );
  });
});

describe('panels of a zone with sloping and round edges', () => {
  it('tile it within 0.01 mm along those edges', () => {
    fc.assert(
      fc.property(slopingPlans, layouts, starts, (plan, varied, start) => {
        const changes = { ...varied, start, jointGap: 0 };
        const { area, layout } = laid(plan, changes);
        const allowed = slopingLength(area.area);
        const sum = layout.panels.reduce((total, { outline }) => total + polygonArea(outline), 0);
        expect(Math.abs(sum - regionArea(area.area))).toBeLessThanOrEqual(allowed);
        inGrid(layout, changes);
      }),
      { numRuns: 100 },
    );
  });
});

describe('marks', () => {
  it('are unique, and follow courses from below and each course from the left', () => {
    fc.assert(
      fc.property(rectilinearPlans, layouts, starts, (plan, varied, start) => {
        const { layout } = laid(plan, { ...varied, start });
        const numbers = layout.panels.map(({ mark }) => Number(mark.slice('A-Z1-'.length)));
        expect(numbers).toEqual(layout.panels.map((_, i) => i + 1));
        layout.panels.slice(1).forEach((panel, i) => {
          const before = layout.panels[i]!;
          const [left, leftBefore] = [boxOf(panel.outline.outer).left, boxOf(before.outline.outer).left];
          expect(panel.course > before.course || (panel.course === before.course && left >= leftBefore)).toBe(
            true,
          );
        });
      }),
      { numRuns: 60 },
    );
  });
});
