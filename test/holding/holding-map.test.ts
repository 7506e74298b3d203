import { describe, expect, it } from 'vitest';
import { bandsOfFace } from '../../core/holding/face-bands';
import { boxOf, rectangle, regionArea, type Polygon } from '../../core/geometry/polygon';

const face = (outline: Polygon) => ({ outline, box: boxOf(outline.outer) });
const mm2 = (region: Parameters<typeof regionArea>[0]) => regionArea(region) / 1e4;

describe('the bands of a face for a magnet of 20 mm', () => {
  it('of a panel of 500 × 300 mm: in full from 40 mm inside, half from 10 mm', () => {
    const { clear, near } = bandsOfFace(face(rectangle(0, 0, 50000, 30000)), [], 20);
    expect(mm2(clear)).toBe(420 * 220);
    expect(mm2(near)).toBe(480 * 280 - 420 * 220);
  });

  it('of a strip of 79 mm: half everywhere; of one narrower than the magnet: nothing', () => {
    expect(bandsOfFace(face(rectangle(0, 0, 50000, 7900)), [], 20)).toMatchObject({ clear: [] });
    expect(mm2(bandsOfFace(face(rectangle(0, 0, 50000, 7900)), [], 20).near)).toBeCloseTo(480 * 59, 6);
    expect(bandsOfFace(face(rectangle(0, 0, 50000, 1900)), [], 20)).toEqual({ clear: [], near: [] });
  });

  it('about a screw of 10 mm: discs of 45 and 15 mm are taken off, within the chords of the circles', () => {
    const panel = face(rectangle(0, 0, 50000, 30000));
    const { clear, near } = bandsOfFace(panel, [{ x: 250, y: 150, diameter: 10 }], 20);
    const [inner, outer] = [Math.PI * 15 ** 2, Math.PI * 45 ** 2];
    // A ring of a hundredth's half is what rounding may add.
    expect(Math.abs(mm2(clear) - (420 * 220 - outer))).toBeLessThan(2 * Math.PI * 45 * 0.02);
    expect(Math.abs(mm2(near) - (480 * 280 - 420 * 220 + outer - inner))).toBeLessThan(
      2 * Math.PI * 60 * 0.02,
    );
  });

  it('about a hollow corner: an arc, as near to the corner as to the edges', () => {
    const outer = [
      { x: 0, y: 0 },
      { x: 40000, y: 0 },
      { x: 40000, y: 20000 },
      { x: 20000, y: 20000 },
      { x: 20000, y: 40000 },
      { x: 0, y: 40000 },
    ];
    const { clear } = bandsOfFace(face({ outer, holes: [] }), [], 20);
    // Two legs of 120 wide, and the corner square of 160 less a quarter of a circle of 40 about the corner.
    const square = 160 * 160 - (Math.PI * 40 ** 2) / 4;
    expect(Math.abs(mm2(clear) - (square + 2 * 120 * 200 - 0 - 2 * 120 * 40))).toBeLessThan(2);
  });
});
