import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '../../core/geometry/polygon';
import { countStockSheets, type CutSize } from '../../core/cutting/count-stock-sheets';
import { kindsOf } from '../../core/cutting/kinds';
import { boundsOf } from '../../core/cutting/lower-bound';

const stock = { id: 'S', width: 500, height: 500, price: 1, hasFace: true };
const size = (width: number, height: number): CutSize => ({ width, height, area: width * height });
const check = (cut: CutSize[], kerf: number, expected: number) => {
  expect(countStockSheets(cut, stock, 'free', kerf)).toBe(expected);
  expect(countStockSheets(cut, stock, 'edge-to-edge', kerf)).toBe(expected);
};

describe('the quick count of stock sheets', () => {
  test('small cases', () => {
    check([], 0, 0);
    check([size(500, 500), size(500, 500)], 0, 2);
    check([size(250, 500), size(500, 250)], 0, 1);
    check([size(250, 500), size(500, 250)], 1, 2);
    check([size(250, 250), size(250, 250), size(250, 250), size(250, 250)], 0, 1);
    check([size(249, 249), size(249, 249), size(249, 249), size(249, 249)], 2, 1);
    check([size(300, 500), size(200, 300), size(200, 200)], 0, 1);
    check([size(600, 100)], 0, 1);
  });

  const sizes = fc.array(
    fc
      .tuple(fc.integer({ min: 20, max: 500 }), fc.integer({ min: 20, max: 500 }))
      .map(([w, h]) => size(w, h)),
    { minLength: 1, maxLength: 25 },
  );
  const methods = fc.constantFrom('free' as const, 'edge-to-edge' as const);

  test('never undercuts the proved bound, never exceeds one stock sheet a panel', () => {
    fc.assert(
      fc.property(sizes, methods, fc.constantFrom(0, 3), (cut, method, kerf) => {
        const count = countStockSheets(cut, stock, method, kerf);
        const task = {
          panels: cut.map(({ width, height }, i) => ({
            mark: `P${i}`,
            stock: ['S'],
            outline: rectangle(0, 0, width, height),
          })),
          stock: [stock],
          rack: [],
          method,
          kerf,
          leastOffcut: [1, 1] as const,
        };
        expect(count).toBeGreaterThanOrEqual(boundsOf(task, kindsOf(task)).newSheets);
        expect(count).toBeLessThanOrEqual(cut.length);
      }),
      { numRuns: 200 },
    );
  });

  test('does not depend on the order of the panels or on how they lie', () => {
    fc.assert(
      fc.property(sizes, methods, fc.integer(), (cut, method, seed) => {
        const shuffled = [...cut]
          .sort(
            (a, b) =>
              ((a.width * 31 + a.height * 17 + seed) % 13) - ((b.width * 31 + b.height * 17 + seed) % 13),
          )
          .map(({ width, height, area }) => ({ width: height, height: width, area }));
        expect(countStockSheets(shuffled, stock, method, 2)).toBe(countStockSheets(cut, stock, method, 2));
      }),
      { numRuns: 100 },
    );
  });
});
