import { describe, expect, it } from 'vitest';
import { fitFrame, panned, toScreen, toWall, zoomedAt } from '../../../web/elevation/frame';

const margin = { left: 10, right: 20, top: 30, bottom: 40 };
const frame = fitFrame({ x: -500, y: 0, width: 5000, height: 2500 }, 1030, 800, margin);

describe('the view', () => {
  it('fits a box inside its margins, in the middle, y up', () => {
    expect(frame.scale).toBeCloseTo(0.2, 12);
    expect(toScreen(frame, { x: -500, y: 0 }).px).toBeCloseTo(10, 9);
    expect(toScreen(frame, { x: 4500, y: 2500 }).px).toBeCloseTo(1010, 9);
    const [top, bottom] = [toScreen(frame, { x: 0, y: 2500 }).py, toScreen(frame, { x: 0, y: 0 }).py];
    expect(bottom - top).toBeCloseTo(500, 9);
    expect(top - margin.top).toBeCloseTo(800 - margin.bottom - bottom, 9);
  });

  it('there and back is where it was', () => {
    const { px, py } = toScreen(frame, { x: 1234, y: 567 });
    expect(toWall(frame, { px, py }).x).toBeCloseTo(1234, 9);
    expect(toWall(frame, { px, py }).y).toBeCloseTo(567, 9);
  });

  it('zooms to the cursor: what is under it stays under it', () => {
    const at = { px: 333, py: 222 };
    const before = toWall(frame, at);
    const after = toWall(zoomedAt(frame, at, 3.7), at);
    expect(after.x).toBeCloseTo(before.x, 6);
    expect(after.y).toBeCloseTo(before.y, 6);
  });

  it('never zooms out of all measure', () => {
    const at = { px: 0, py: 0 };
    expect(zoomedAt(frame, at, 1e9).scale).toBe(20);
    expect(zoomedAt(frame, at, 1e-9).scale).toBeGreaterThan(0);
  });

  it('pans by px', () => {
    expect(toScreen(panned(frame, 5, -7), { x: 0, y: 0 })).toEqual({
      px: frame.originX + 5,
      py: frame.originY - 7,
    });
  });

  it('fits a wall without size into a drawing without size', () => {
    const nothing = fitFrame({ x: 0, y: 0, width: 0, height: 0 }, 0, 0, margin);
    expect(Number.isFinite(nothing.scale) && Number.isFinite(nothing.originX)).toBe(true);
  });
});
