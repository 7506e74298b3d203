import { describe, expect, it } from 'vitest';
import { graduation } from '../../../web/tapes/graduation';

describe('the small strokes of a tape', () => {
  it('every 50 mm at 0.2 px/mm, from where the tape is seen', () => {
    expect(graduation(0.2, 0, 30).map(({ at }) => at)).toEqual([0, 5000, 10_000, 15_000]);
    expect(graduation(0.2, -15, 20).map(({ at }) => at)).toEqual([-5000, 0]);
  });

  it.each([[false], [true]])('stand at least 7 px apart and are few at every scale, inches: %s', (inches) => {
    for (let scale = 0.0008; scale <= 20; scale *= 1.3) {
      const places = graduation(scale, -300, 1400, inches).map(({ at }) => at);
      expect(places.length).toBeLessThanOrEqual(202);
      places
        .slice(1)
        .forEach((at, i) => expect(((at - places[i]!) / 100) * scale).toBeGreaterThanOrEqual(7 - 1e-9));
    }
  });

  it('in feet and inches are inches with a longer one at the foot, or sixteenths with one at the inch', () => {
    const inches = graduation(0.3, 0, 0.3 * 25.4 * 25, true);
    expect(inches.map(({ at }) => Math.round(at / 2540))).toEqual([...Array(25).keys()]);
    expect(inches.filter(({ long }) => long).map(({ at }) => Math.round(at / 2540))).toEqual([0, 12, 24]);
    const parts = graduation(5, 0, 5 * 25.4 * 1.01, true);
    expect(parts).toHaveLength(17);
    expect(parts.filter(({ long }) => long).map(({ at }) => at)).toEqual([0, 2540]);
  });
});
