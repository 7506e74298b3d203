import { describe, expect, it } from 'vitest';
import { difference, intersection, regionOfRings, union } from '../../core/geometry/clip';
import { regionArea, type Region } from '../../core/geometry/polygon';
import { areaAt, ring, ringsOf } from './shapes';

/** Rings of a published case, read by the even-odd rule. */
function evenOdd(rings: readonly string[], scale = 1): Region {
  return regionOfRings(rings.map((figures) => ring(figures, scale)));
}

const trapezoidCase = [['0,0 21,0 21,3.5 0,3.5'], ['21,7 0,7 7,0 14,0']] as const;
const tiles = [
  '10,10',
  '20,10',
  '30,10',
  '40,10',
  '50,10',
  '10,20',
  '30,20',
  '10,30',
  '20,30',
  '30,30',
  '40,30',
];

describe('Clipper2, Tests/Polygons.txt (Boost licence): area and number of paths', () => {
  it.each([
    ['1', ['100,10 150,100 100,190 50,100'], 9000, 1],
    ['2, a hole', ['100,10 150,100 100,190 50,100', '80,70 120,80 100,130'], 7900, 2],
    [
      '46, eleven boxes that touch by edge and corner leave no slits',
      tiles.map((corner) => {
        const [x, y] = corner.split(',').map(Number) as [number, number];
        return `${x},${y} ${x + 10},${y} ${x + 10},${y + 10} ${x},${y + 10}`;
      }),
      1100,
      2,
    ],
    [
      '48, a ring that touches itself, and a box over it',
      [
        '220,720 420,720 420,520 320,520 320,480 480,480 480,800 180,800 180,480 320,480 320,520 220,520',
        '440,520 620,520 620,420 440,420',
      ],
      70800,
      3,
    ],
  ])('no. %s', (_, rings, area, paths) => {
    const region = evenOdd(rings);
    expect(regionArea(region)).toBe(area);
    expect(ringsOf(region)).toHaveLength(paths);
  });

  it('no. 49: the same two united as subject and clip', () => {
    const shape = evenOdd([
      '220,720 420,720 420,520 320,520 320,480 480,480 480,800 180,800 180,480 320,480 320,520 220,520',
    ]);
    const box = evenOdd(['440,520 620,520 620,420 440,420']);
    expect(regionArea(union(shape, box))).toBe(72400);
  });

  it('no. 79 and 80: shapes that only touch, by area, as the number of paths differs between libraries', () => {
    const a = evenOdd(['200,100 250,150 300,300 350,250'], 100);
    const b = evenOdd(['300,50 200,250 50,50'], 100);
    expect(areaAt(union(a, b), 100)).toBeCloseTo(30000, 0);
    expect(areaAt(intersection(a, b), 100)).toBeCloseTo(0, 0);
  });

  it('no. 65: an intersection of self-crossing rings', () => {
    const a = evenOdd(['500,300 750,550 900,350 400,200 300,350'], 100);
    const b = evenOdd(['700,250 400,200 100,250 100,550 100,250'], 100);
    expect(areaAt(intersection(a, b), 100)).toBeCloseTo(5000, 0);
  });

  // The file's own areas come after rounding to its integers; these are exact, by rational arithmetic.
  it.each([
    ['16', difference, ['-103,-219 -103,-136 -115,-136'], ['-110,-174 -70,-174 -110,-155'], 377.48],
    [
      '30',
      difference,
      ['0,0 100,0 104,116 0,118', '111,115 200,103 200,200 105,200'],
      ['0,103 112,111 105,200 0,200', '116,0 200,0 200,113 101,110'],
      18865.93,
    ],
    [
      '78',
      intersection,
      ['150,500 400,250 450,450'],
      ['750,250 450,300 350,250 450,300 450,500 250,100'],
      8173.08,
    ],
  ])('no. %s, at a ten-thousandth of its unit', (_, operation, subject, clip, area) => {
    const result = operation(evenOdd(subject, 1e4), evenOdd(clip, 1e4));
    expect(Math.abs(areaAt(result, 1e4) - area)).toBeLessThan(0.01);
  });
});

describe('polygon-clipping, test/end-to-end (MIT): areas at a hundredth of the unit', () => {
  const square = '0,0 1,0 1,1 0,1';
  const large = '0.25,0.25 2.75,0.25 2.75,2.75 0.25,2.75';
  it.each([
    ['poly-and-square', [square], [large], { less: 0.4375, both: 0.5625, either: 6.6875, one: 6.125 }],
    [
      'poly-with-hole-and-square',
      [square, '0.2,0.2 0.4,0.2 0.4,0.4 0.2,0.4'],
      [large],
      { less: 0.42, both: 0.54, either: 6.67, one: 6.13 },
    ],
    ['touching-boxes', ['0,0 3,0 3,3 0,3'], ['3,1 4,1 4,2 3,2'], { less: 9, both: 0, either: 10, one: 10 }],
    ['overlap-edges', ['0,0 3,0 3,3 0,3'], ['1,0 2,0 2,4 1,4'], { less: 6, both: 3, either: 10, one: 7 }],
    ['polygon-and-trapezoid', ...trapezoidCase, { less: 36.75, both: 36.75, either: 134.75, one: 98 }],
  ] as const)('%s', (_, a, b, { less, both, either, one }) => {
    const [p, q] = [evenOdd(a, 100), evenOdd(b, 100)];
    expect(areaAt(difference(p, q), 100)).toBe(less);
    expect(areaAt(intersection(p, q), 100)).toBe(both);
    expect(areaAt(union(p, q), 100)).toBe(either);
    expect(areaAt(union(difference(p, q), difference(q, p)), 100)).toBe(one);
  });

  it('touching-boxes leave no piece without area, overlap-edges leave two pieces', () => {
    expect(intersection(evenOdd(['0,0 3,0 3,3 0,3']), evenOdd(['3,1 4,1 4,2 3,2']))).toEqual([]);
    expect(difference(evenOdd(['0,0 3,0 3,3 0,3']), evenOdd(['1,0 2,0 2,4 1,4']))).toHaveLength(2);
  });

  it('island-in-hole-4x: four frames in each other', () => {
    const box = (h: number) => `${-h},${-h} ${h},${-h} ${h},${h} ${-h},${h}`;
    const frame = (h: number) => evenOdd([box(h), box(h - 1)]);
    expect(regionArea(union(frame(2), frame(4), frame(6), frame(8)))).toBe(144);
    expect(intersection(frame(2), frame(4))).toEqual([]);
  });
});
