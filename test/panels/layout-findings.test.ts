import { describe, expect, it } from 'vitest';
import { polygonArea, regionArea } from '../../core/geometry/polygon';
import type { Job } from '../../core/job/schema';
import { cutSizeOf } from '../../core/panels/cut-size';
import { layOutZone } from '../../core/panels/lay-out';
import { surveyWall } from '../../core/survey/survey';
import { zoneAreas } from '../../core/zones/zone-areas';
import { layOut, layout, mmRectangle, shelfCount, stockSheet, zoneArea } from './zones-by-hand';

const sheet = stockSheet(500, 500);

describe('findings of a layout', () => {
  it('name a sliver, its width, its place and the mend', () => {
    const { panels, findings } = layOut(zoneArea(mmRectangle([0, 0, 530, 500]), []), sheet);
    expect(panels.map(({ sliver }) => sliver)).toEqual([false, true]);
    expect(findings).toEqual([
      {
        level: 'warning',
        code: 'sliver',
        wall: 'A',
        object: 'A-Z1-02',
        text:
          'Panel A-Z1-02 is 30 mm wide at (515, 250), under the least width of 50 mm: ' +
          'move the start by 20 mm, or let the best start be found.',
      },
    ]);
  });

  it('tell of panels under the least area', () => {
    const area = zoneArea(mmRectangle([0, 0, 600, 60]), [], { leastArea: 10_000 });
    expect(layOut(area, sheet).findings.map(({ code, object }) => [code, object])).toEqual([
      ['panel-under-least-area', 'A-Z1-02'],
    ]);
  });

  it('tell of a weak web of 20 mm where slivers are allowed, and of none of 30 mm', () => {
    const web = (at: number) =>
      layOut(
        zoneArea(mmRectangle([0, 0, 500, 500]), [mmRectangle([at, 200, 80, 80])], { leastWidth: 0 }),
        sheet,
      ).findings;
    expect(web(20).map(({ code, text }) => [code, text.slice(0, 41)])).toEqual([
      ['weak-web', 'Panel A-Z1-01 keeps only 20 mm of steel b'],
    ]);
    expect(web(30)).toEqual([]);
  });

  it('own up to mixed formats that are not laid', () => {
    const area = zoneArea(mmRectangle([0, 0, 500, 500]), [], { stocks: ['S1', 'S2'] });
    expect(layOut(area, sheet).findings.map(({ code }) => code)).toEqual(['mixed-formats-not-laid']);
  });

  it('own up to a search that left starts out, in a hall of some ten thousand panels', () => {
    const openings = Array.from({ length: 20 }, (_, i) =>
      mmRectangle([1000 + i * 2317, 1000 + i * 1873, 700 + i * 13, 400 + i * 7]),
    );
    const hall = zoneArea(mmRectangle([0, 0, 50_000, 50_000]), openings, { start: 'best' });
    const { panels, considered, findings } = layOut(hall, sheet);
    expect(panels.length).toBeGreaterThan(9_900);
    expect(considered).toBeLessThan(400);
    expect(findings.map(({ code }) => code)).toContain('best-start-not-exhaustive');
  });
});

describe('the worked example of the job format', () => {
  const wall = {
    id: 'A',
    name: 'North wall',
    outline: [
      [0, 0],
      [5400, 0],
      [5400, 2700],
      [0, 2700],
    ],
    rim: { floor: 0, ceiling: 0, left: 0, right: 0 },
    openings: [{ id: 'D1', kind: 'door', x: 300, y: 0, width: 926, height: 2040, clearance: 60 }],
    fittings: [
      { id: 'K1', kind: 'socket', x: 1500, y: 300, width: 146, height: 86, clearance: 5 },
      { id: 'P1', kind: 'pipe', circle: { x: 4000, y: 900, diameter: 40 }, clearance: 10 },
    ],
    zones: [
      {
        id: 'Z1',
        name: 'Proofs',
        shape: [
          [1400, 900],
          [5200, 900],
          [5200, 2400],
          [1400, 2400],
        ],
        holes: [],
        buildUp: 'steel-panel',
        layout: layout({ start: 'best' }),
      },
    ],
  } as Job['walls'][number];

  it('leaves 3800 × 1500 mm less half a circle of 30 mm, in 23 stock sheets', () => {
    const area = zoneAreas(surveyWall(wall))[0]!;
    // The circle is circumscribed within 0.02 mm: half its area is at least π · 30² / 2.
    const taken = 5_700_000 - regionArea(area.area) / 1e4;
    expect(taken).toBeGreaterThanOrEqual((Math.PI * 900) / 2);
    expect(taken).toBeLessThan((Math.PI * 30.02 ** 2) / 2 + 0.1);

    const { panels, runnersUp, considered } = layOutZone({
      wallId: 'A',
      area,
      stock: [sheet],
      countStockSheets: shelfCount(50000, 50000),
    });
    // 5.7 m² fill 22.8 sheets of 0.25 m². By hand: seven whole columns of three, and the 300 mm left over as two
    // columns of 100 to 200 mm, of which three pieces come out of one sheet: 21 + 6 / 3 = 23, the least possible.
    const cut = panels.filter(({ full }) => !full).map(({ outline }) => cutSizeOf(outline));
    expect(panels.length - cut.length + shelfCount(50000, 50000)(cut)).toBe(23);
    expect(panels.filter(({ sliver }) => sliver)).toEqual([]);
    expect(considered).toBeGreaterThan(1);
    expect(runnersUp).toHaveLength(3);
    const sum = panels.reduce((total, { outline }) => total + polygonArea(outline), 0);
    expect(Math.abs(sum - regionArea(area.area))).toBeLessThan(10_000);
  });
});
