import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CutKnapsack } from '../../core/cutting/bounds/cut-knapsack';
import type { BoundSize } from '../../core/cutting/weighings';

/*
 * The most that can be cut from a piece edge to edge, against trying every cut at every whole unit.
 */

const side = fc.integer({ min: 1, max: 6 });
const sizes = fc.array(fc.record({ width: side, height: side, count: fc.constant(1) }), {
  minLength: 1,
  maxLength: 5,
});
const carrier = fc.record({
  width: fc.integer({ min: 3, max: 11 }),
  height: fc.integer({ min: 3, max: 11 }),
});

function mostByTrying(all: readonly BoundSize[], weights: readonly number[], width: number, height: number) {
  const known = new Map<string, number>();
  const most = (w: number, h: number): number => {
    const key = `${w} ${h}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    let best = 0;
    all.forEach((size, s) => {
      const fits =
        (size.width <= w && size.height <= h) || (size.height <= w && size.width <= h) ? weights[s]! : 0;
      best = Math.max(best, fits);
    });
    for (let x = 1; 2 * x <= w; x++) best = Math.max(best, most(x, h) + most(w - x, h));
    for (let y = 1; 2 * y <= h; y++) best = Math.max(best, most(w, y) + most(w, h - y));
    known.set(key, best);
    return best;
  };
  return most(width, height);
}

function filled(
  all: readonly BoundSize[],
  carriers: readonly { width: number; height: number }[],
  weights: number[],
) {
  const knapsack = new CutKnapsack(all, carriers);
  for (const work of knapsack.fill(weights)) expect(work).toBeGreaterThan(0);
  return knapsack;
}

test('is what trying every cut gives, and its pattern is worth as much', () => {
  fc.assert(
    fc.property(
      sizes,
      fc.array(carrier, { minLength: 1, maxLength: 2 }),
      fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 5, maxLength: 5 }),
      (all, carriers, weights) => {
        const knapsack = filled(all, carriers, weights);
        for (const { width, height } of carriers) {
          const most = mostByTrying(all, weights, width, height);
          expect(knapsack.most({ width, height })).toBe(most);
          const counts = knapsack.pattern({ width, height });
          expect(counts.reduce((sum, count, s) => sum + count * weights[s]!, 0)).toBe(most);
          const area = counts.reduce((sum, count, s) => sum + count * all[s]!.width * all[s]!.height, 0);
          expect(area).toBeLessThanOrEqual(width * height);
        }
      },
    ),
    { numRuns: 400 },
  );
});

test('is never less where sides are rounded down to a raster', () => {
  fc.assert(
    fc.property(
      sizes,
      carrier,
      fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 5, maxLength: 5 }),
      (all, { width, height }, weights) => {
        const most = mostByTrying(all, weights, width, height);
        // A hundred and one to the unit, and sizes a little off, so that their sums are too many to keep.
        const fine = all.map((size, s) => ({
          ...size,
          width: size.width * 101 - s,
          height: size.height * 101 - 2 * s,
        }));
        const crumbs = Array.from({ length: 8 }, (_, i) => ({ width: 11 + i, height: 13 + i, count: 1 }));
        const knapsack = filled(
          [...fine, ...crumbs],
          [{ width: width * 101, height: height * 101 }],
          [...weights.slice(0, fine.length), ...crumbs.map(() => 0)],
        );
        expect(knapsack.most({ width: width * 101, height: height * 101 })).toBeGreaterThanOrEqual(most);
      },
    ),
    { numRuns: 60 },
  );
});
