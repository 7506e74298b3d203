import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxesHolding } from '../../core/geometry/box-index';

const at = fc.integer({ min: -50, max: 50 });
const size = fc.oneof(fc.integer({ min: 0, max: 8 }), fc.integer({ min: 0, max: 120 }));
const box = fc
  .tuple(at, at, size, size)
  .map(([left, bottom, width, height]) => ({ left, bottom, right: left + width, top: bottom + height }));

describe('boxes that hold a point', () => {
  it('are those that looking at every one of them finds, in their order', () => {
    fc.assert(
      fc.property(
        fc.array(box, { maxLength: 40 }),
        fc.array(fc.tuple(at, at), { minLength: 1, maxLength: 20 }),
        (boxes, points) => {
          const holding = boxesHolding(boxes);
          for (const [x, y] of points) {
            const all = boxes.flatMap(({ left, right, bottom, top }, i) =>
              x >= left && x <= right && y >= bottom && y <= top ? [i] : [],
            );
            expect(holding({ x, y })).toEqual(all);
          }
        },
      ),
      { numRuns: 300, seed: 3 },
    );
  });
});
