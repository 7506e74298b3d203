import { describe, expect, it } from 'vitest';
import { fitView, type FittedView, type Point2 } from '../../core/geometry/homography';
import { rectifiedArea, rectify, type Pixels } from '../../core/geometry/rectify';

const corners: readonly Point2[] = [
  [0, 0],
  [4000, 0],
  [4000, 2000],
  [0, 2000],
];
const wholeWall = { left: -500, bottom: -500, right: 4500, top: 2500 };

function viewOf(px: readonly Point2[]): FittedView {
  const view = fitView(px.map((one, i) => ({ px: one, at: corners[i]! })));
  if ('fault' in view) throw new Error(view.fault);
  return view;
}

/** A photo whose every pixel has the colour of its place on a wall of red from left to right and green upwards. */
function photoOf(view: FittedView, width: number, height: number): Pixels {
  const data = new Uint8ClampedArray(width * height * 4);
  const [a, b, c, d, e, f, g, h, i] = view.toWall as unknown as [...Nine];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [px, py] = [x + 0.5, y + 0.5];
      const w = g * px + h * py + i;
      const at = (y * width + x) * 4;
      data[at] = ((a * px + b * py + c) / w / 4000) * 200 + 20;
      data[at + 1] = ((d * px + e * py + f) / w / 2000) * 200 + 20;
      data[at + 3] = 255;
    }
  }
  return { data, width, height };
}
type Nine = [number, number, number, number, number, number, number, number, number];

describe('a photo seen square-on', () => {
  const px: readonly Point2[] = [
    [120, 520],
    [690, 470],
    [680, 150],
    [130, 60],
  ];
  const view = viewOf(px);
  const photo = photoOf(view, 800, 600);

  it('has every place of the wall where it belongs', () => {
    const area = rectifiedArea(view, photo, px, wholeWall)!;
    expect(area.left).toBeGreaterThanOrEqual(-500);
    expect(area.right).toBeLessThanOrEqual(4500);
    expect(area.width * area.height).toBeLessThanOrEqual(6_100_000);
    const into = {
      data: new Uint8ClampedArray(area.width * area.height * 4),
      width: area.width,
      height: area.height,
    };
    rectify(photo, view.toPhoto, area, into);
    for (const [x, y] of [
      [10, 10],
      [3990, 1990],
      [2000, 1000],
      [333, 1777],
      [3500, 120],
    ] as const) {
      const column = Math.floor((x - area.left) * area.scale);
      const row = Math.floor((area.top - y) * area.scale);
      const at = (row * area.width + column) * 4;
      expect(into.data[at + 3]).toBe(255);
      // Colours go in steps of 20 mm across and 10 mm up.
      expect(Math.abs((into.data[at]! - 20) * 20 - x)).toBeLessThan(30);
      expect(Math.abs((into.data[at + 1]! - 20) * 10 - y)).toBeLessThan(15);
    }
  });

  it('is clear where the photo has nothing', () => {
    const area = rectifiedArea(view, photo, px, wholeWall)!;
    const into = { data: new Uint8ClampedArray(area.width * area.height * 4), ...area };
    rectify(photo, view.toPhoto, { ...area, left: -60_000, right: -55_000 }, into);
    expect(into.data.some((byte) => byte !== 0)).toBe(false);
  });

  it('done in strips is the same', () => {
    const area = { ...rectifiedArea(view, photo, px, wholeWall)!, width: 60, height: 40, scale: 0.012 };
    const make = () => ({ data: new Uint8ClampedArray(60 * 40 * 4), width: 60, height: 40 });
    const [whole, strips] = [make(), make()];
    rectify(photo, view.toPhoto, area, whole);
    for (let from = 0; from < 40; from += 7) {
      rectify(photo, view.toPhoto, area, strips, { from, to: Math.min(40, from + 7) });
    }
    expect(strips.data).toEqual(whole.data);
    expect(whole.data.some((byte) => byte !== 0)).toBe(true);
  });

  it('ends before the horizon of a steep view', () => {
    // Level with the wall's middle, its far end small: beyond it the photo shows sky.
    const steep: readonly Point2[] = [
      [20, 580],
      [500, 330],
      [500, 270],
      [20, 20],
    ];
    const area = rectifiedArea(viewOf(steep), { width: 800, height: 600 }, steep, {
      left: -1e6,
      bottom: -1e6,
      right: 1e6,
      top: 1e6,
    })!;
    expect(Number.isFinite(area.right)).toBe(true);
    expect(area.right).toBeGreaterThan(4000);
    expect(area.width).toBeLessThanOrEqual(4096);
    expect(area.height).toBeLessThanOrEqual(4096);
  });

  it('of another part of the wall shows nothing', () => {
    expect(rectifiedArea(view, photo, px, { left: 90_000, bottom: 0, right: 95_000, top: 2000 })).toBeNull();
  });
});
