import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitPhoto, panPhoto, toPhoto, toView, zoomPhoto } from '../../../web/photo/photo-frame';

const photo = { width: 3000, height: 2250 };
const view = { width: 900, height: 700 };

describe('a photo on the screen', () => {
  it('fits with a margin, in the middle', () => {
    const frame = fitPhoto(photo, view);
    const [left, top] = toView(frame, [0, 0]);
    const [right, bottom] = toView(frame, [3000, 2250]);
    expect(left).toBeGreaterThanOrEqual(12);
    expect(left + right).toBeCloseTo(900, 9);
    expect(top + bottom).toBeCloseTo(700, 9);
  });

  it('is zoomed about the hand, and there and back is the same point', () => {
    const frame = zoomPhoto(fitPhoto(photo, view), [450, 350], 4, photo, view);
    const [x, y] = toPhoto(frame, [450, 350]);
    expect([x, y]).toEqual([expect.closeTo(1500, 6), expect.closeTo(1125, 6)]);
    expect(toView(frame, [x, y])).toEqual([expect.closeTo(450, 6), expect.closeTo(350, 6)]);
  });

  it('never leaves the view and never gets smaller than the whole, whatever the hand does', () => {
    const step = fc.tuple(
      fc.double({ min: -3000, max: 3000, noNaN: true }),
      fc.double({ min: -3000, max: 3000, noNaN: true }),
      fc.double({ min: 0.01, max: 100, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        let frame = fitPhoto(photo, view);
        const whole = frame.scale;
        for (const [dx, dy, factor] of steps) {
          frame = zoomPhoto(panPhoto(frame, dx, dy, photo, view), [dx, dy], factor, photo, view);
          const [x, y] = toPhoto(frame, [450, 350]);
          expect(x).toBeGreaterThanOrEqual(-1e-6);
          expect(x).toBeLessThanOrEqual(3000 + 1e-6);
          expect(y).toBeGreaterThanOrEqual(-1e-6);
          expect(y).toBeLessThanOrEqual(2250 + 1e-6);
          expect(frame.scale).toBeGreaterThanOrEqual(whole);
          expect(frame.scale).toBeLessThanOrEqual(16);
        }
      }),
    );
  });
});
