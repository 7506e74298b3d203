import { describe, expect, it } from 'vitest';
import { guidePlace, sizePlace, wordsHeight } from '../../../web/elevation/layers/guide-places';

const frame = { scale: 0.1, originX: 100, originY: 400, width: 700, height: 500 };

describe('words on the drawing while something is dragged', () => {
  it('stand above the left end of a level line, and at the foot of an upright one', () => {
    expect(guidePlace(frame, { axis: 'y', at: 2000 }, 200, null)).toEqual({
      left: 6,
      top: 179.5,
      width: 200,
    });
    const foot = guidePlace(frame, { axis: 'x', at: 1000 }, 200, null);
    expect(foot).toEqual({ left: 205.5, top: 500 - wordsHeight, width: 200 });
  });

  it('never lie over the size of what is in hand, wherever that is', () => {
    for (const axis of ['x', 'y'] as const)
      for (let px = -50; px <= 750; px += 10)
        for (let py = -50; py <= 550; py += 10) {
          const size = sizePlace(frame, px, py, 120);
          const at = axis === 'x' ? (px - 100) / 0.1 : (400 - py) / 0.1;
          const words = guidePlace(frame, { axis, at }, 260, size);
          const apart =
            words.left + words.width <= size.left ||
            size.left + size.width <= words.left ||
            Math.abs(words.top - size.top) >= wordsHeight;
          expect(apart, `${axis} ${px} ${py}`).toBe(true);
        }
  });

  it('turn to the left of a line near the right end', () => {
    expect(guidePlace(frame, { axis: 'x', at: 5500 }, 200, null).left).toBe(650.5 - 205);
  });

  it('the size stays on the drawing', () => {
    expect(sizePlace(frame, 690, 2, 120)).toEqual({ left: 576, top: 2, width: 120 });
  });
});
