import { describe, expect, it } from 'vitest';
import { resizedBox } from '../../../web/elevation/gestures/resized-box';

const box = { x: 100, y: 200, width: 300, height: 400 };

describe('pulling edges of a box', () => {
  it.each([
    [{ x: 1, y: 0 }, 10, 99, { x: 100, y: 200, width: 310, height: 400 }],
    [{ x: -1, y: 0 }, 10, 99, { x: 110, y: 200, width: 290, height: 400 }],
    [{ x: 0, y: 1 }, 99, -50, { x: 100, y: 200, width: 300, height: 350 }],
    [{ x: -1, y: -1 }, -10, -20, { x: 90, y: 180, width: 310, height: 420 }],
  ] as const)('%j by %d, %d', (handle, dx, dy, expected) => {
    expect(resizedBox(box, handle, dx, dy)).toEqual(expected);
  });

  it('the opposite edge stays even when a hand pulls past it', () => {
    const small = resizedBox(box, { x: -1, y: 0 }, 1000, 0);
    expect(small.x + small.width).toBe(400);
    expect(small.width).toBeGreaterThan(0);
  });

  it('square: both sides as the longer one, about the opposite corner', () => {
    expect(resizedBox(box, { x: -1, y: 1 }, -200, 0, true)).toEqual({
      x: -100,
      y: 200,
      width: 500,
      height: 500,
    });
  });
});
