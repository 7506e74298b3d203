import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { searchBestStart } from '../../core/panels/best-start';
import { patternOf } from '../../core/panels/grid';
import { figuresOfStart, type StartQuestion } from '../../core/panels/start-figures';
import { startMeter } from '../../core/panels/start-meter';
import { toHundredth } from '../../core/units';
import { areaOf, layouts, rectilinearPlans, slopingPlans, type ZonePlan } from './random-zones';
import { layout, shelfCount, stockSheet } from './zones-by-hand';

const stock = stockSheet(500, 400);

function question(plan: ZonePlan, changes: object, ...moved: [number?, number?, boolean?]): StartQuestion {
  const pattern = patternOf(layout(changes), stock);
  return {
    area: areaOf(plan, changes, ...moved),
    pattern,
    leastWidth: toHundredth(layout(changes).leastWidth),
    countStockSheets: shelfCount(pattern.width, pattern.height),
  };
}

const starts = fc.record({
  x: fc.integer({ min: -60000, max: 60000 }),
  y: fc.integer({ min: -60000, max: 60000 }),
});

describe('the search measures a start as laying out would', () => {
  it.each([
    ['rectilinear', rectilinearPlans, 400],
    ['sloping and round', slopingPlans, 60],
  ] as const)('%s', (_, plans, numRuns) => {
    fc.assert(
      fc.property(plans, layouts, starts, (plan, changes, { x, y }) => {
        const asked = question(plan, changes);
        if (asked.area.area.length === 0) return;
        const meter = startMeter(asked);
        const counts = meter.countPanels(x, y, Infinity)!;
        const sizes = meter.cutSizes(x, y);
        const plain = figuresOfStart(asked, meter.startAt(x, y));
        expect({
          slivers: counts.slivers,
          cutPanels: counts.cut,
          panels: counts.cut + counts.full,
          stockSheets: counts.full + asked.countStockSheets(sizes),
        }).toEqual({
          slivers: plain.slivers,
          cutPanels: plain.cutPanels,
          panels: plain.panels,
          stockSheets: plain.stockSheets,
        });
      }),
      { numRuns },
    );
  });
});

describe('the best start', () => {
  it('is never beaten in slivers, then stock sheets, then cuts by a raster of starts', () => {
    fc.assert(
      fc.property(rectilinearPlans, layouts, (plan, changes) => {
        const asked = question(plan, changes);
        const { best } = searchBestStart(asked);
        const { pitchX, pitchY } = asked.pattern;
        for (let i = 0; i < 9; i++) {
          for (let j = 0; j < 9; j++) {
            const start = { x: Math.round((i * pitchX) / 9), y: Math.round((j * pitchY) / 9) };
            const other = figuresOfStart(asked, start);
            expect(best.slivers).toBeLessThanOrEqual(other.slivers);
            if (other.slivers > best.slivers) continue;
            expect(best.stockSheets).toBeLessThanOrEqual(other.stockSheets);
            if (other.stockSheets > best.stockSheets) continue;
            expect(best.cutPanels).toBeLessThanOrEqual(other.cutPanels);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it('reports the figures that laying it out gives, runners-up too', () => {
    fc.assert(
      fc.property(rectilinearPlans, layouts, (plan, changes) => {
        const asked = question(plan, changes);
        const { best, runnersUp } = searchBestStart(asked);
        for (const candidate of [best, ...runnersUp]) {
          expect(candidate).toEqual(figuresOfStart(asked, candidate.start));
        }
      }),
      { numRuns: 40 },
    );
  });

  it('moves with the wall, and leads to as many panels on a mirrored one', () => {
    fc.assert(
      fc.property(
        rectilinearPlans,
        layouts,
        fc.integer({ min: -3000, max: 3000 }),
        fc.integer({ min: -3000, max: 3000 }),
        (plan, changes, dx, dy) => {
          const { best } = searchBestStart(question(plan, changes));
          const moved = searchBestStart(question(plan, changes, dx, dy)).best;
          expect(moved).toEqual({
            ...best,
            start: { x: best.start.x + toHundredth(dx), y: best.start.y + toHundredth(dy) },
          });
          if (changes.stagger) return;
          const mirrored = searchBestStart(question(plan, changes, 0, 0, true)).best;
          expect([mirrored.slivers, mirrored.stockSheets, mirrored.cutPanels]).toEqual([
            best.slivers,
            best.stockSheets,
            best.cutPanels,
          ]);
        },
      ),
      { numRuns: 40 },
    );
  });
});
