import { describe, expect, it } from 'vitest';
import { narrowPlace } from '../../core/panels/sliver';
import { toHundredth } from '../../core/units';
import { zoneArea, mmPolygon, mmRectangle, type MmRectangle } from './zones-by-hand';

function check(points: readonly (readonly [number, number])[], leastWidth: number, expected: number | null) {
  const place = narrowPlace(mmPolygon(points), toHundredth(leastWidth));
  expect(place && place.width / 100).toEqual(expected);
}

function less(shape: MmRectangle, openings: MmRectangle[]) {
  return zoneArea(mmRectangle(shape), openings.map(mmRectangle)).area[0]!;
}

describe('slivers by opening with a square, worked by hand', () => {
  it('a strip is one below the least width and none at it', () => {
    check(
      [
        [0, 0],
        [49.99, 0],
        [49.99, 500],
        [0, 500],
      ],
      50,
      49.99,
    );
    check(
      [
        [0, 0],
        [50, 0],
        [50, 500],
        [0, 500],
      ],
      50,
      null,
    );
  });
  it('an L with a leg of 30 mm is one', () =>
    check(
      [
        [0, 0],
        [500, 0],
        [500, 30],
        [200, 30],
        [200, 500],
        [0, 500],
      ],
      50,
      30,
    ));
  it('an L with legs of 60 mm is none', () =>
    check(
      [
        [0, 0],
        [500, 0],
        [500, 60],
        [60, 60],
        [60, 500],
        [0, 500],
      ],
      50,
      null,
    ));
  it('a step of 20 mm in a wide edge is none: the square goes into every corner', () =>
    check(
      [
        [0, 0],
        [500, 0],
        [500, 480],
        [250, 480],
        [250, 500],
        [0, 500],
      ],
      50,
      null,
    ));
  it('a web of 20 mm under a hole is one', () => {
    const place = narrowPlace(less([0, 0, 500, 500], [[100, 20, 80, 80]]), 5000);
    expect(place!.width).toBe(2000);
  });
  it('a lost part of up to 1 mm² is overlooked', () => {
    check(
      [
        [0, 0],
        [500, 0],
        [500, 500],
        [0.99, 500],
        [0.99, 501],
        [0, 501],
      ],
      50,
      null,
    );
    check(
      [
        [0, 0],
        [500, 0],
        [500, 500],
        [1.02, 500],
        [1.02, 501],
        [0, 501],
      ],
      50,
      1,
    );
  });
  it('a staircase of 45 mm squares overlapping by 15 mm is one', () => {
    const steps = [0, 30, 60];
    const ring = [
      ...steps.flatMap(
        (at) =>
          [
            [at + 45 - 0, at],
            [at + 45, at + 30],
          ] as [number, number][],
      ),
      [105, 105],
      ...steps.toReversed().flatMap(
        (at) =>
          [
            [at, at + 45],
            [at, at + 15],
          ] as [number, number][],
      ),
      [0, 0],
    ] as [number, number][];
    expect(narrowPlace(mmPolygon(ring), 5000)).not.toBeNull();
  });
  it('a panel under a sloping ceiling is none: its lost corners lie at the slope alone', () =>
    check(
      [
        [0, 0],
        [500, 0],
        [500, 200],
        [0, 450],
      ],
      50,
      null,
    ));
  it('a tip of 20° is one, a tip of 45° is none', () => {
    const height = 500 * Math.tan((20 * Math.PI) / 180);
    expect(
      narrowPlace(
        mmPolygon([
          [0, 0],
          [500, 0],
          [500, height],
        ]),
        5000,
      ),
    ).not.toBeNull();
    check(
      [
        [0, 0],
        [500, 0],
        [500, 500],
      ],
      50,
      null,
    );
  });
  it('a strip of 30 mm between two slopes is one, of 80 mm none', () => {
    const strip = (width: number) =>
      mmPolygon([
        [0, 0],
        [width * Math.SQRT2, 0],
        [500 + width * Math.SQRT2, 500],
        [500, 500],
      ]);
    expect(narrowPlace(strip(30), 5000)).not.toBeNull();
    // A square on its corner needs (50 + 50)/√2 = 70.7 mm between slopes of 45°.
    expect(narrowPlace(strip(71), 5000)).toBeNull();
    expect(narrowPlace(strip(70), 5000)).not.toBeNull();
  });
});
