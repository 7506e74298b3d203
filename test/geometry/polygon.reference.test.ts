import { describe, expect, it } from 'vitest';
import { doubleSignedArea, type Ring } from '../../core/geometry/polygon';
import { ring } from './shapes';

describe('the shoelace formula', () => {
  it('Rosetta Code, "Shoelace formula for polygonal area": 30, anticlockwise negative there and here', () => {
    expect(doubleSignedArea(ring('3,4 5,11 12,8 9,5 5,6')) / 2).toBe(-30);
  });

  // Naively summed products give 3.1415926535897825 at 10¹, 3.0 at 10⁸ and 0.0 at 10⁹ (open maths article).
  it.each([0, 1, 2, 4, 6, 8, 9])('a triangle of area π keeps its area 10^%i away from the origin', (n) => {
    const away = 10 ** n;
    const triangle: Ring = [
      { x: away, y: away + Math.PI },
      { x: away, y: away },
      { x: away + 2, y: away },
    ];
    // What is left is the rounding of π + 10ⁿ itself.
    expect(Math.abs(doubleSignedArea(triangle) / 2 - Math.PI)).toBeLessThanOrEqual(away * 2 ** -52 + 1e-15);
  });

  it('a rectangle of 400 m by 400 m is exact to the square hundredth', () => {
    expect(doubleSignedArea(ring('1,1 40000000,1 40000000,40000000 1,40000000'))).toBe(2 * 39999999 ** 2);
  });
});
