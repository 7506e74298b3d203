import { expect, it } from 'vitest';
import { bandOf, endAt, endHandles, peopleAt } from '../../../web/elevation/people-band';
import type { Frame } from '../../../web/elevation/frame';

/** A tenth of a pixel to the millimetre, the datum at (100, 400). */
const frame: Frame = { scale: 0.1, originX: 100, originY: 400, width: 800, height: 500 };
const bed = { id: 'B1', kind: 'bed', x: 1000, width: 2000 } as const;
const seat = { id: 'B2', kind: 'seat', x: 2800, width: 100, y: 500 } as const;

it('a band stands on its foot, which may be above the floor', () => {
  expect(bandOf(bed, frame)).toEqual({ left: 200, right: 400, top: 385, foot: 400 });
  expect(bandOf(seat, frame)).toEqual({ left: 380, right: 390, top: 335, foot: 350 });
});

it('its ends are pulled by handles outside it, and a short one can still be gripped itself', () => {
  expect(endHandles(bed, frame)).toEqual([
    { end: -1, px: 192, py: 392.5 },
    { end: 1, px: 408, py: 392.5 },
  ]);
  expect(endAt(bed, frame, { px: 401, py: 390 }, false)).toBe(1);
  expect(endAt(bed, frame, { px: 183, py: 390 }, false)).toBe(-1);
  expect(endAt(bed, frame, { px: 300, py: 390 }, true)).toBeNull();
  expect(endAt(seat, frame, { px: 385, py: 342 }, true)).toBeNull();
  expect(endAt(seat, frame, { px: 396, py: 342 }, true)).toBe(1);
});

it('of two that lie over each other the one painted last is under the hand', () => {
  expect(peopleAt([bed, { ...seat, y: 0 }], frame, { px: 385, py: 392 }, false)?.id).toBe('B2');
  expect(peopleAt([bed, seat], frame, { px: 385, py: 392 }, false)?.id).toBe('B1');
  expect(peopleAt([bed, seat], frame, { px: 300, py: 378 }, false)).toBeUndefined();
  expect(peopleAt([bed, seat], frame, { px: 300, py: 378 }, true)?.id).toBe('B1');
});
