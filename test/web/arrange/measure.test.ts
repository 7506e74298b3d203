import { describe, expect, it } from 'vitest';
import { newFitting, newOpening, newWall } from '../../../core/job/defaults';
import { middles, nearestPoints } from '../../../web/measure/between-boxes';
import { pointNear } from '../../../web/measure/snap-point';

describe('between two objects', () => {
  const a = { x: 0, y: 0, width: 100, height: 400 };
  const b = { x: 700, y: 200, width: 100, height: 600 };
  it('side by side: at the middle of the height they share', () => {
    expect(nearestPoints(a, b)).toEqual({ from: { x: 100, y: 300 }, to: { x: 700, y: 300 } });
    expect(nearestPoints(b, a)).toEqual({ from: { x: 700, y: 300 }, to: { x: 100, y: 300 } });
  });
  it('neither beside nor above each other: from corner to corner', () => {
    expect(nearestPoints(a, { ...b, y: 800 })).toEqual({ from: { x: 100, y: 400 }, to: { x: 700, y: 800 } });
  });
  it('from middle to middle', () => {
    expect(middles(a, b)).toEqual({ from: { x: 50, y: 200 }, to: { x: 750, y: 500 } });
  });
});

describe('a point of the wall that is pointed at', () => {
  const empty = newWall('A', '', 5000, 2600);
  const sloping = {
    ...empty,
    outline: [
      [0, 0],
      [5000, 0],
      [5000, 2000],
      [0, 2600],
    ] as [number, number][],
  };
  const wall = {
    ...sloping,
    openings: [{ ...newOpening(empty, 'door'), x: 300 }],
    fittings: [newFitting(empty, 'light')],
  };
  it('is a corner before a middle before an edge', () => {
    expect(pointNear(wall, { x: 1230, y: 2035 }, 20)).toMatchObject({
      x: 1226,
      y: 2040,
      words: 'a corner of door D1',
    });
    expect(pointNear(wall, { x: 1220, y: 1015 }, 20)).toMatchObject({ x: 1226, y: 1020 });
    expect(pointNear(wall, { x: 1220, y: 700 }, 20)).toMatchObject({
      x: 1226,
      y: 700,
      words: 'the edge of door D1',
    });
  });
  it('lies on a sloping edge: foot of the perpendicular, by hand', () => {
    // The edge falls 600 over 5000: normal (600, 5000) / √25 360 000.
    const found = pointNear(wall, { x: 1000 + 6, y: 2480 + 50 }, 60)!;
    expect(found.x).toBeCloseTo(1000, 1);
    expect(found.y).toBeCloseTo(2480, 1);
  });
  it('is none where nothing is near', () => {
    expect(pointNear(wall, { x: 3000, y: 1000 }, 20)).toBeNull();
  });
});
