import fc from 'fast-check';
import * as polyclip from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { difference, offsetMitred } from '../../core/geometry/clip';
import { boxOf, regionArea, type Polygon } from '../../core/geometry/polygon';
import { emptyJob, newWall } from '../../core/job/defaults';
import type { Job, Layout, StockSheet } from '../../core/job/schema';
import { layOutZone } from '../../core/panels/lay-out';
import { runSteps } from '../../core/panels/pace';
import type { ZoneLayout } from '../../core/panels/panel';
import { layoutRequest } from '../../core/run/layout-request';
import { panelCosts } from '../../core/run/panel-costs';
import { toHundredth, toMm } from '../../core/units';
import { areaOf, rectilinearPlans, type ZonePlan } from '../panels/random-zones';

/*
 * Zones laid from several formats, held against each of the formats alone by the cutting plan's cost, and against
 * polyclip-ts, an independent clipping library.
 */

function sheet(id: string, width: number, height: number, price: number): StockSheet {
  return { id, name: '', width, height, thickness: 0.5, price, hasFace: false, spares: 0 };
}

function jobWith(stock: readonly StockSheet[]): Job {
  return { ...emptyJob(), stock: [...stock] };
}

const layoutOf = (stock: readonly StockSheet[], changes: Partial<Layout>): Partial<Layout> => ({
  stock: stock[0]!.id,
  stocks: stock.map(({ id }) => id),
  start: 'best',
  ...changes,
});

function lay(job: Job, plan: ZonePlan, changes: Partial<Layout>): ZoneLayout {
  return layOutZone(layoutRequest(job, newWall('A', '', 5000, 3000), areaOf(plan, changes))!);
}

function costOf(job: Job, { panels }: ZoneLayout): number {
  return runSteps(panelCosts(job, job.stock).planCost(panels)).cost;
}

function rectangularZone(width: number, height: number, openings: ZonePlan['openings'] = []): ZonePlan {
  return {
    shape: [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ],
    openings,
    holes: [],
  };
}

function placesOf({ panels }: ZoneLayout) {
  return panels.map(({ stock, full, outline }) => {
    const { left, bottom, right, top } = boxOf(outline.outer);
    return [stock, full, ...[left, bottom, right - left, top - bottom].map(toMm)];
  });
}

describe('two formats in one zone, by hand', () => {
  const stock = [sheet('L', 1000, 1000, 20), sheet('S', 500, 500, 6)];
  const job = jobWith(stock);

  it('are whole large ones in the body and whole small ones in the strip that is left', () => {
    const layout = lay(job, rectangularZone(2500, 1000), layoutOf(stock, { start: 'lower-left' }));
    expect(placesOf(layout)).toEqual([
      ['L', true, 0, 0, 1000, 1000],
      ['L', true, 1000, 0, 1000, 1000],
      ['S', true, 2000, 0, 500, 500],
      ['S', true, 2000, 500, 500, 500],
    ]);
    // 2 × 20 + 2 × 6 instead of 3 × 20.
    expect(costOf(job, layout)).toBe(5200);
    expect(layout.findings.map(({ code, text }) => [code, text])).toEqual([
      [
        'formats-mixed',
        'Zone Z1 is laid with 2 panels of L and 2 panels of S: that saves 8.00 EUR against L alone.',
      ],
    ]);
  });

  it('keep the joint gap between them', () => {
    const changes = layoutOf(stock, { start: 'lower-left', jointGap: 4 });
    const places = placesOf(lay(job, rectangularZone(2512, 1004), changes));
    expect(places.filter(([id]) => id === 'L')).toEqual([
      ['L', true, 0, 0, 1000, 1000],
      ['L', true, 1004, 0, 1000, 1000],
    ]);
    expect(places).toContainEqual(['S', true, 2008, 0, 500, 500]);
    expect(places).toContainEqual(['S', true, 2008, 504, 500, 500]);
  });

  it('are one where the large one alone costs less', () => {
    const dear = [sheet('L', 1000, 1000, 20), sheet('S', 500, 500, 30)];
    const layout = lay(jobWith(dear), rectangularZone(2500, 1000), layoutOf(dear, {}));
    expect(new Set(layout.panels.map((panel) => panel.stock))).toEqual(new Set(['L']));
    expect(layout.findings.map(({ code }) => code)).toEqual(['formats-mixed']);
    expect(layout.findings[0]!.text).toContain('no mix of the listed formats costs less than L alone');
  });

  it('are the one listed first where the other is of another thickness, and a finding says so', () => {
    const unlike = [stock[0]!, { ...stock[1]!, thickness: 1 }];
    const layout = lay(jobWith(unlike), rectangularZone(2500, 1000), layoutOf(unlike, {}));
    expect(new Set(layout.panels.map((panel) => panel.stock))).toEqual(new Set(['L']));
    expect(layout.findings.map(({ level, code }) => [level, code])).toEqual([
      ['warning', 'mixed-formats-not-laid'],
    ]);
  });

  it('are compared by the area that is bought where neither has a price', () => {
    const free = [sheet('L', 1000, 1000, 0), sheet('S', 500, 500, 0)];
    const layout = lay(jobWith(free), rectangularZone(2500, 1000), layoutOf(free, { start: 'lower-left' }));
    expect(layout.findings[0]!.text).toContain('saves 0.50 m² of stock sheets against L alone');
  });
});

const formats = fc.constantFrom(
  [sheet('A', 1000, 1000, 20), sheet('B', 500, 500, 5.5)],
  [sheet('A', 1000, 500, 11), sheet('B', 500, 500, 6), sheet('C', 600, 300, 4)],
  [sheet('A', 500, 500, 6), sheet('B', 1000, 1000, 20)],
  [sheet('A', 1250, 800, 0), sheet('B', 625, 400, 0)],
);
const changes: fc.Arbitrary<Partial<Layout>> = fc.record({
  jointGap: fc.constantFrom(0, 0, 3.5),
  stagger: fc.constantFrom(0, 0, 0.5),
  leastWidth: fc.constantFrom(30, 50, 80.5),
  start: fc.constantFrom('best', 'lower-left') as fc.Arbitrary<Layout['start']>,
});

type Rings = [number, number][][];
const rings = ({ outer, holes }: Polygon): Rings =>
  [outer, ...holes].map((ring) => ring.map(({ x, y }): [number, number] => [x, y]));

describe('several formats in random zones', () => {
  it('never cost more than any of them alone, tile the zone, and come each out of their own stock sheet', () => {
    let dearest = 0;
    let mixed = 0;
    fc.assert(
      fc.property(rectilinearPlans, formats, changes, (plan, stock, varied) => {
        const job = jobWith(stock);
        const layout = lay(job, plan, layoutOf(stock, varied));
        const cost = costOf(job, layout);
        for (const alone of stock) {
          const single = costOf(job, lay(job, plan, { ...varied, stock: alone.id }));
          expect(cost).toBeLessThanOrEqual(single);
          if (alone === stock[0]) dearest += single - cost;
        }
        if (new Set(layout.panels.map((panel) => panel.stock)).size > 1) mixed++;
        for (const panel of layout.panels) {
          const { width, height } = stock.find(({ id }) => id === panel.stock)!;
          const { left, right, bottom, top } = boxOf(panel.outline.outer);
          const [across, up] = [right - left, top - bottom];
          const [w, h] = [toHundredth(width), toHundredth(height)];
          expect((across <= w && up <= h) || (across <= h && up <= w)).toBe(true);
        }
        const area = areaOf(plan, varied).area;
        if (layout.panels.length === 0) return;
        const outlines = layout.panels.map(({ outline }) => outline);
        const union = polyclip.union(...(outlines.map(rings) as [Rings]));
        expect(polyclip.difference(union, area.map(rings))).toEqual([]);
        if (varied.jointGap === 0) {
          expect(regionArea(outlines)).toBe(regionArea(area));
          expect(polyclip.xor(union, area.map(rings))).toEqual([]);
        }
        // What is left between them is nowhere wider than the joint: shrunk by half of it, nothing remains.
        expect(offsetMitred(difference(area, outlines), -176)).toEqual([]);
        expect(new Set(layout.panels.map(({ mark }) => mark)).size).toBe(layout.panels.length);
      }),
      { numRuns: 40, seed: 7 },
    );
    expect(mixed).toBeGreaterThan(0);
    expect(dearest).toBeGreaterThan(0);
  });

  it('are laid alike every time', () => {
    fc.assert(
      fc.property(rectilinearPlans, formats, changes, (plan, stock, varied) => {
        const job = jobWith(stock);
        expect(lay(job, plan, layoutOf(stock, varied))).toEqual(lay(job, plan, layoutOf(stock, varied)));
      }),
      { numRuns: 8 },
    );
  });
});
