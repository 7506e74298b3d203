import { describe, expect, it } from 'vitest';
import { flattenCircle, flattenVertices } from '../../core/geometry/arc';
import { arcThrough } from '../../core/geometry/circular-arc';
import { doubleSignedArea } from '../../core/geometry/polygon';

const squareMm = (ring: Parameters<typeof doubleSignedArea>[0]) => doubleSignedArea(ring) / 2e4;

describe('circle and segment formulae (school geometry)', () => {
  it.each([1, 20, 450, 5000])('area of a circle of radius %i mm lies between its two polygons', (radius) => {
    const inside = squareMm(flattenCircle({ x: 0, y: 0 }, 2 * radius, 'inscribed').ring);
    const outside = squareMm(flattenCircle({ x: 0, y: 0 }, 2 * radius, 'circumscribed').ring);
    const area = Math.PI * radius ** 2;
    // 0.02 mm along the whole way round is the most that either may differ.
    const most = 0.02 * 2 * Math.PI * (radius + 0.02);
    expect(inside).toBeLessThan(area);
    expect(area - inside).toBeLessThan(most);
    expect(outside).toBeGreaterThan(area);
    expect(outside - area).toBeLessThan(most);
  });

  it('a chord of 1200 mm with a rise of 150 mm: r = (c² / 4 + h²) / 2h = 1275 mm', () => {
    const arc = arcThrough({ x: 0, y: 0 }, { x: 60000, y: 15000 }, { x: 120000, y: 0 })!;
    expect(arc.radius / 100).toBeCloseTo(1275, 9);
    expect(arc.centre.x / 100).toBeCloseTo(600, 9);
    expect(arc.centre.y / 100).toBeCloseTo(150 - 1275, 9);
    // Over the top from left to right is clockwise; half the angle has sin θ = c / 2r.
    expect(arc.sweep).toBeCloseTo(-2 * Math.asin(600 / 1275), 12);
  });

  it('a segmental arch over that chord has the area of the segment, r² (θ − sin θ) / 2', () => {
    const { ring } = flattenVertices([[0, 0], [1200, 0], { arcTo: [0, 0], via: [600, 150] }], 'inscribed'); // prettier-ignore
    const theta = 2 * Math.asin(600 / 1275);
    const segment = (1275 ** 2 * (theta - Math.sin(theta))) / 2;
    expect(segment - squareMm(ring)).toBeGreaterThan(0);
    expect(segment - squareMm(ring)).toBeLessThan(0.02 * 1275 * theta);
  });

  it('Euclid III.31: a corner of 90° stands on a half circle', () => {
    const arc = arcThrough({ x: 0, y: 0 }, { x: 3600, y: 4800 }, { x: 10000, y: 0 })!;
    expect(arc.radius).toBeCloseTo(5000, 9);
    expect(Math.abs(arc.sweep)).toBeCloseTo(Math.PI, 12);
  });

  it('no more corners than half as many again as the fewest possible', () => {
    // The widest edge between circles of R and R + 0.02 mm spans 2 acos(R / (R + 0.02)).
    for (const radius of [30, 450, 1000, 20_000]) {
      const fewest = Math.PI / Math.acos(radius / (radius + 0.02));
      const { ring } = flattenCircle({ x: 0, y: 0 }, 2 * radius, 'circumscribed');
      expect(ring.length).toBeLessThan(1.6 * fewest + 8);
    }
  });
});
