import { describe, expect, test } from 'vitest';
import {
  counting,
  dualFeasibleFunctions,
  identity,
  rounding,
  threshold,
} from '../../core/cutting/dual-feasible';

describe('dual feasible functions', () => {
  test('are superadditive for every pair of lengths: f(a) + f(b) ≤ f(a + b)', () => {
    const broken: [length: number, a: number, b: number][] = [];
    for (const length of [1, 2, 7, 12, 30, 41]) {
      const functions = [identity(length)];
      for (let k = 1; k <= length + 3; k++) functions.push(rounding(length, k));
      for (let e = 1; 2 * e <= length; e++) functions.push(threshold(length, e), counting(length, e));
      for (const { at } of functions) {
        for (let a = 0; a <= length; a++) {
          for (let b = a; a + b <= length; b++) if (at(a) + at(b) > at(a + b)) broken.push([length, a, b]);
        }
      }
    }
    expect(broken).toEqual([]);
  });

  test('count lengths above a half as more than a half, so that three of five ninths need three sheets', () => {
    const most = Math.max(...dualFeasibleFunctions(9, [5]).map(({ at, length }) => (3 * at(5)) / at(length)));
    expect(most).toBe(3);
  });

  // S. P. Fekete, J. Schepers (2001), the example of figure 1: u⁽¹⁾ sees that two lengths above a half never
  // share, u⁽²⁾ that three above a third never do.
  test('rounding: u⁽ᵏ⁾ counts 1/k for every length just above C/(k + 1)', () => {
    for (const k of [1, 2, 3, 4]) {
      const { at } = rounding(60, k);
      expect(at(60 / (k + 1) + 1) / at(60)).toBeCloseTo(1 / k, 12);
    }
  });
});
