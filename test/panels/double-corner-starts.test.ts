import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { searchBestStart } from '../../core/panels/best-start';
import { doubleCornerStarts } from '../../core/panels/double-corner-starts';
import { patternOf } from '../../core/panels/grid';
import { figuresOfStart, type StartQuestion } from '../../core/panels/start-figures';
import { startMeter } from '../../core/panels/start-meter';
import { toHundredth } from '../../core/units';
import { areaOf } from './random-zones';
import { layout, stockSheet } from './zones-by-hand';

type Corner = readonly [number, number];

/** With a stock sheet for every cut panel, sheets follow from the panels alone and not from their sizes. */
function question(
  shape: readonly Corner[],
  [width, height]: Corner,
  changes: object = {},
  ...moved: [number?, number?, boolean?]
): StartQuestion {
  return {
    area: areaOf({ shape, openings: [], holes: [] }, changes, ...moved),
    pattern: patternOf(layout(changes), stockSheet(width, height)),
    leastWidth: toHundredth(layout(changes).leastWidth),
    countStockSheets: (cut) => cut.length,
  };
}

/*
 * Slopes of 3, −1, ⅓ and −1 through the corners of a sheet of 400 × 300 mm whose lower left is the origin: pushed right
 * it must go down by as much, and may not go down at all but to the left.
 *
 *      600      ╱╲  100
 *      300     ┌───╲        it fits whole there and nowhere else, and
 *       75   ╱ │    │ ╲ 625   no edge of the area is level or upright
 *        0     └───╱
 *     -100      ╲╱
 */
const held: readonly Corner[] = [
  [100, -100],
  [625, 75],
  [100, 600],
  [-75, 75],
];

describe('a start at which slopes pass several corners of a cell at once, worked by hand', () => {
  const isThere = (asked: StartQuestion, x: number, y: number) => {
    const { pitchX, pitchY } = asked.pattern;
    const modulo = (value: number, by: number) => ((value % by) + by) % by;
    const [atX, atY] = [modulo(toHundredth(x), pitchX), modulo(toHundredth(y), pitchY)];
    return [...doubleCornerStarts(asked)].some((start) => start.x === atX && start.y === atY);
  };

  it('is among those looked at, with and without joints and stagger, wherever the wall is', () => {
    for (const changes of [{}, { jointGap: 4 }, { stagger: 0.5 }, { stagger: 0.25, jointGap: 2 }]) {
      const moved = question(held, [400, 300], changes, 1234.56, -777.77);
      const starts = [...doubleCornerStarts(moved)].filter(({ x, y }) => {
        const meter = startMeter(moved);
        return meter.countPanels(x, y, Infinity)!.full === 1;
      });
      expect(starts.length).toBeGreaterThan(0);
    }
    expect(isThere(question(held, [400, 300]), 0, 0)).toBe(true);
    expect(isThere(question(held, [400, 300], {}, 0, 0, true), -400, 0)).toBe(true);
  });
});

/** Four slopes and no edge that is level or upright; starts on 5 mm meet two of them at once now and then. */
const betweenSlopes = fc
  .record({
    a: fc.integer({ min: 4, max: 40 }),
    b: fc.integer({ min: 4, max: 40 }),
    c: fc.integer({ min: 4, max: 40 }),
    slopes: fc.tuple(...Array.from({ length: 3 }, () => fc.constantFrom(0.5, 1, 2))),
  })
  .map(({ a, b, c, slopes: [first, second, third] }): readonly Corner[] => {
    const right: Corner = [10 * a, 10 * a * first!];
    const top: Corner = [right[0] - 10 * b, right[1] + 10 * b * second!];
    const left: Corner = [top[0] - 10 * c, top[1] - 10 * c * third!];
    return [[0, 0], right, top, left];
  })
  .filter(([, , , left]) => left![0] < -20 && left![1] > 20);

/** Where a search that looked at one slope and an event of an axis alone was beaten. */
const onceBeaten: readonly Corner[] = [
  [0, 0],
  [220, 110],
  [-140, 830],
  [-390, 580],
];

describe('between four slopes, the best start', () => {
  // No least width: where a slope and another edge face each other, not every start that has no sliver is looked at.
  it('is never beaten by a raster of 5 mm in panels and cut panels', () => {
    fc.assert(
      fc.property(betweenSlopes, (shape) => {
        const asked = question(shape, [200, 160], { leastWidth: 0 });
        const { best, capped } = searchBestStart(asked);
        if (capped) return;
        const meter = startMeter(asked);
        for (let x = 0; x < asked.pattern.pitchX; x += 500) {
          for (let y = 0; y < asked.pattern.pitchY; y += 500) {
            const other = meter.countPanels(x, y, best.slivers);
            if (!other) continue;
            const better = other.full + other.cut - best.panels || other.cut - best.cutPanels;
            expect(better).toBeGreaterThanOrEqual(0);
          }
        }
        expect(figuresOfStart(asked, best.start)).toEqual(best);
      }),
      { numRuns: 12, examples: [[onceBeaten]] },
    );
  });
});
