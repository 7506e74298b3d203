import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeFigures, type Wanted } from '../../../web/tapes/place-figures';

const span = { from: 0, to: 1000 };
const figure = (at: number, rank = 1): Wanted => ({ at, length: 30, rank });

describe('figures on a tape', () => {
  it('stand after their ticks where there is room', () => {
    expect(placeFigures([figure(100), figure(200)], 2, span)).toEqual([
      { start: 103, row: 0 },
      { start: 203, row: 0 },
    ]);
  });

  it('stand before their ticks at the end of the tape', () => {
    expect(placeFigures([figure(990)], 1, span)).toEqual([{ start: 957, row: 0 }]);
  });

  it('make room for the ticks beside them, or go to the next row', () => {
    expect(placeFigures([figure(100), figure(110), figure(120)], 2, span)).toEqual([
      { start: 67, row: 0 },
      { start: 113, row: 1 },
      { start: 123, row: 0 },
    ]);
  });

  it('what finds no room has none', () => {
    const crowd = [100, 104, 108, 112, 116].map((at) => figure(at));
    expect(placeFigures(crowd, 1, span).filter((place) => place)).toHaveLength(2);
  });

  it('the higher rank has its place first', () => {
    const [low, high] = placeFigures([figure(100, 1), figure(101, 9)], 1, span);
    expect(high).toEqual({ start: 104, row: 0 });
    expect(low).toEqual({ start: 67, row: 0 });
  });

  it('what is off the tape has none', () => {
    expect(placeFigures([figure(-20), figure(1020)], 2, span)).toEqual([null, null]);
  });

  it('never overlap, and no tick runs through one', () => {
    const wants = fc.array(
      fc.record({
        at: fc.integer({ min: -50, max: 1050 }),
        length: fc.integer({ min: 10, max: 60 }),
        rank: fc.integer({ min: 0, max: 5 }),
      }),
      { maxLength: 60 },
    );
    fc.assert(
      fc.property(wants, fc.integer({ min: 1, max: 3 }), (wanted, rows) => {
        const placed = placeFigures(wanted, rows, span).flatMap((place, i) =>
          place ? [{ ...place, end: place.start + wanted[i]!.length, at: wanted[i]!.at }] : [],
        );
        for (const a of placed) {
          expect(a.start).toBeGreaterThanOrEqual(0);
          expect(a.end).toBeLessThanOrEqual(1000);
          for (const b of placed) {
            if (a === b) continue;
            if (a.row === b.row) expect(a.end <= b.start || b.end <= a.start).toBe(true);
            // The tick of b is drawn through every row up to b's own.
            if (b.row >= a.row) expect(b.at <= a.start || b.at >= a.end).toBe(true);
          }
        }
      }),
    );
  });
});
