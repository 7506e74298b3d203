import { describe, expect, it } from 'vitest';
import type { Fitting } from '../../../core/job/schema';
import { boxHandles, handleAt } from '../../../web/elevation/handles';

const frame = { scale: 0.1, originX: 0, originY: 1000, width: 1000, height: 1000 };
const fitting = (width: number, height: number) =>
  ({ id: 'R1', kind: 'radiator', x: 1000, y: 1000, width, height, clearance: 0 }) as unknown as Fitting;
/** px on the screen of a place in the object, parts of its sides from its lower left. */
const within = (width: number, height: number, x: number, y: number) => ({
  px: 100 + (width / 10) * x,
  py: 900 - (height / 10) * y,
});

describe('handles', () => {
  it('stand outside a large object, at its corners and the middles of its sides', () => {
    const handles = boxHandles(fitting(1000, 600), frame);
    expect(handles).toHaveLength(8);
    for (const { px, py } of handles) expect(px < 100 || px > 200 || py > 900 || py < 840).toBe(true);
  });

  it('leave out the middles of sides too short for a third handle', () => {
    const narrow = boxHandles(fitting(100, 1000), frame);
    expect(narrow.map(({ x, y }) => [x, y])).not.toContainEqual([0, 1]);
    expect(narrow).toHaveLength(6);
    expect(boxHandles(fitting(100, 100), frame)).toEqual([]);
  });

  it.each([true, false])(
    'leave the middle half of a narrow object to be gripped itself (touch: %s)',
    (touch) => {
      const narrow = fitting(120, 1000);
      for (let y = 0.3; y <= 0.7; y += 0.05) {
        for (const x of [0.3, 0.5, 0.7]) {
          expect(handleAt(narrow, frame, within(120, 1000, x, y), touch)).toBeNull();
        }
      }
    },
  );

  it('are taken from outside and from just within', () => {
    const large = fitting(2000, 2000);
    expect(handleAt(large, frame, { px: 92, py: 800 }, false)).toMatchObject({ x: -1, y: 0 });
    expect(handleAt(large, frame, { px: 101, py: 899 }, false)).toMatchObject({ x: -1, y: -1 });
    expect(handleAt(large, frame, { px: 110, py: 800 }, true)).toMatchObject({ x: -1, y: 0 });
    expect(handleAt(large, frame, { px: 130, py: 800 }, true)).toBeNull();
  });
});
