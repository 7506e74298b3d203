import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { windowOfRows } from '../../../web/schedule/window-of-rows';

describe('the drawn part of a long table', () => {
  it('is all of a table of up to 120 rows', () => {
    expect(windowOfRows(120, 34, 3000, 200)).toEqual({ first: 0, count: 120, above: 0, below: 0 });
  });

  it('always covers what is in view, and the heights add up to the whole table', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 121, max: 200_000 }),
        fc.integer({ min: 20, max: 60 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: 50, max: 2000 }),
        (rows, rowHeight, share, height) => {
          const top = share * Math.max(0, rows * rowHeight - height);
          const { first, count, above, below } = windowOfRows(rows, rowHeight, top, height);
          expect(above + count * rowHeight + below).toBe(rows * rowHeight);
          expect(above).toBeLessThanOrEqual(top);
          expect(above + count * rowHeight).toBeGreaterThanOrEqual(Math.min(top + height, rows * rowHeight));
          expect(count).toBeLessThan(200);
          expect(first).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });
});
