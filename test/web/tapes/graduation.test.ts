import { describe, expect, it } from 'vitest';
import { graduation } from '../../../web/tapes/graduation';

describe('the small strokes of a tape', () => {
  it('every 50 mm at 0.2 px/mm, from where the tape is seen', () => {
    expect(graduation(0.2, 0, 30)).toEqual([0, 5000, 10_000, 15_000]);
    expect(graduation(0.2, -15, 20)).toEqual([-5000, 0]);
  });

  it('stand at least 7 px apart and are few at every scale', () => {
    for (let scale = 0.0008; scale <= 20; scale *= 1.3) {
      const places = graduation(scale, -300, 1400);
      expect(places.length).toBeLessThanOrEqual(202);
      places
        .slice(1)
        .forEach((at, i) => expect(((at - places[i]!) / 100) * scale).toBeGreaterThanOrEqual(7 - 1e-9));
    }
  });
});
