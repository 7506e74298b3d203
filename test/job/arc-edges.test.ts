import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bentEdge,
  chordLength,
  middleOfEdge,
  radiusOfEdge,
  riseForRadius,
  riseOfEdge,
  riseTowards,
} from '../../core/job/arc-edges';
import type { Vertex } from '../../core/job/schema';
import { rectangleVertices } from '../../core/job/shape';

const box = rectangleVertices({ x: 0, y: 0, width: 1200, height: 800 });

describe('an edge made an arc', () => {
  // School geometry: r = s / 2 + c² / (8 s). With c = 1200 and s = 150: 75 + 1200 = 1275.
  it('has the radius that chord and rise give it', () => {
    const bent = bentEdge(box, 3, 150);

    expect(bent[3]).toEqual({ arcTo: [0, 800], via: [600, 950] });
    expect(radiusOfEdge(bent, 3)).toBe(1275);
    expect(riseOfEdge(bent, 3)).toBe(150);
    expect(middleOfEdge(bent, 3)).toEqual({ x: 600, y: 950 });
  });
  it('bulges inwards with a rise below 0, whichever way the corners run', () => {
    expect(bentEdge(box, 3, -150)[3]).toEqual({ arcTo: [0, 800], via: [600, 650] });
    const backwards = [...box].reverse();
    const upper = backwards.findIndex(
      (vertex, i) => i > 0 && (vertex as number[])[1] === 800 && (backwards[i - 1] as number[])[1] === 800,
    );
    const bent = bentEdge(backwards, upper, 150)[upper]!;
    expect(bent).toMatchObject({ via: [600, 950] });
  });
  it('is straight again with next to no rise', () => {
    expect(bentEdge(bentEdge(box, 3, 150), 3, 0)).toEqual(box);
    expect(bentEdge(box, 3, 0.02)).toEqual(box);
    expect(riseOfEdge(box, 3)).toBe(0);
    expect(radiusOfEdge(box, 3)).toBeNull();
  });
  it('takes a radius on the side it has, outwards from straight, and none below half its chord', () => {
    expect(riseForRadius(box, 3, 1275)).toBe(150);
    expect(riseForRadius(bentEdge(box, 3, -40), 3, 1275)).toBe(-150);
    expect(riseForRadius(box, 3, 600)).toBe(600);
    expect(riseForRadius(box, 3, 599)).toBeNull();
    // More than half a circle stays so: 1275 + 1125.
    expect(riseForRadius(bentEdge(box, 3, 2000), 3, 1275)).toBe(2400);
  });
  it('closes the shape where it is the first edge listed', () => {
    const bent = bentEdge(box, 0, 100);
    expect(bent[0]).toEqual({ arcTo: [0, 0], via: [-100, 400] });
    expect(chordLength(bent, 0)).toBe(800);
  });
  it('rises to where a hand pulls it, abreast of its middle', () => {
    expect(riseTowards(box, 3, { x: 100, y: 870 })).toBe(70);
    expect(riseTowards(box, 3, { x: 900, y: 700 })).toBe(-100);
  });
  it('keeps rise and radius through the file, for every edge of a slanted shape', () => {
    const coordinate = fc.integer({ min: -2000, max: 2000 });
    fc.assert(
      fc.property(
        coordinate,
        coordinate,
        fc.integer({ min: -500, max: 500 }),
        fc.integer({ min: 0, max: 2 }),
        (x, y, rise, index) => {
          fc.pre(Math.abs(rise) >= 1);
          const shape: Vertex[] = [
            [0, 0],
            [3000, 100],
            [x, 2500 + y / 10],
          ];
          const bent = bentEdge(shape, index, rise);
          const chord = chordLength(bent, index);
          // The point an arc passes is kept to 0.01 mm.
          expect(Math.abs(riseOfEdge(bent, index) - rise)).toBeLessThan(0.03);
          const radius = Math.abs(rise) / 2 + chord ** 2 / (8 * Math.abs(rise));
          expect(Math.abs(radiusOfEdge(bent, index)! - radius) / radius).toBeLessThan(0.02);
        },
      ),
    );
  });
});
