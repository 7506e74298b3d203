import { describe, expect, it } from 'vitest';
import { parsePath, type Chain } from '../../core/svg/path-data';

/**
 * `getTotalLength` and `getBBox` of Chromium 156, an independent reader of path data (run 2026-11-27). Several are after
 * the examples of SVG 1.1, 8.3. Both draw curves out in pieces.
 */
const byChromium: readonly (readonly [string, number, readonly [number, number, number, number]])[] = [
  ['M10 10h80v60h-80z', 280, [10, 10, 80, 60]],
  ['M.5.5l9-3-4 8z', 25.502, [0.5, -2.5, 9, 8]],
  ['M0 0C10 40 60 40 70 0S130-40 140 0', 199.263, [0, -30, 140, 60]],
  ['M10 80Q52.5 10 95 80T180 80', 229.514, [10, 45, 170, 70]],
  ['M80 80A45 45 0 0 0 125 125L125 80Z', 160.696, [80, 80, 45, 45]],
  ['M230 80a45 45 0 1 0 45 45l0-45z', 302.088, [185, 80, 90, 90]],
  [
    'M10 315 110 215A30 50 0 0 1 162.55 162.45L172.55 152.45A30 50-45 0 1 215.1 109.9L315 10',
    555.201,
    [10, 10, 305, 305],
  ],
  ['M0 0a5 5 0 0110 0z', 25.71, [0, -5, 10, 5]],
  ['m5 5 10 0 0 10z m20 0v7H9', 57.142, [5, 5, 20, 10]],
  ['M600 350l50-25a25 25-30 0150-25l50-25', 199.588, [600, 275, 150, 75]],
];

describe('Chromium 156, path data of SVG 1.1', () => {
  it.each(byChromium)('%s', (data, length, [x, y, width, height]) => {
    const chains = parsePath(data)!;
    const own = chains.reduce((sum, chain) => sum + lengthOf(chain), 0);
    expect(Math.abs(own / length - 1)).toBeLessThan(0.001);
    const points = chains.flatMap((chain) => chain.points);
    const [xs, ys] = [points.map((point) => point.x), points.map((point) => point.y)];
    const tolerance = 0.002 * Math.max(width, height);
    for (const [is, wanted] of [
      [Math.min(...xs), x],
      [Math.min(...ys), y],
      [Math.max(...xs), x + width],
      [Math.max(...ys), y + height],
    ] as const)
      expect(Math.abs(is - wanted)).toBeLessThan(tolerance);
  });

  it.each(['L 5 5', 'M 1', 'M0 0 A 5 5 0 2 0 9 9', 'M0 0 L ninety', 'M0 0 z 5'])('refuses %s', (data) => {
    expect(parsePath(data)).toBeNull();
  });
});

function lengthOf({ points, closed }: Chain): number {
  const ends = closed ? [...points, points[0]!] : points;
  return ends.slice(1).reduce((sum, to, i) => sum + Math.hypot(to.x - ends[i]!.x, to.y - ends[i]!.y), 0);
}
