import type { PeopleBelow } from '../../core/job/hung-schema';
import { toScreen, type Frame, type ScreenPoint } from './frame';

/** px: how high the band of a stretch stands over its foot. */
export const bandHeight = 15;
/** Handles stand this far outside the band, so that a short one can still be gripped itself, px. */
const outside = 8;

/** The band of a stretch on the screen, px. */
export interface PxBand {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly foot: number;
}

/** An end of a stretch that is pulled by its handle: −1 the left one. */
export type PeopleEnd = -1 | 1;

export function bandOf({ x, width, y = 0 }: PeopleBelow, frame: Frame): PxBand {
  const { px: left, py: foot } = toScreen(frame, { x, y });
  return { left, right: left + width * frame.scale, top: foot - bandHeight, foot };
}

export function endHandles(one: PeopleBelow, frame: Frame): (ScreenPoint & { readonly end: PeopleEnd })[] {
  const { left, right, top, foot } = bandOf(one, frame);
  const py = (top + foot) / 2;
  return [
    { end: -1, px: left - outside, py },
    { end: 1, px: right + outside, py },
  ];
}

/** The handle under a finger or cursor: 40 px wide to a finger, 20 px to a mouse. */
export function endAt(
  one: PeopleBelow,
  frame: Frame,
  { px, py }: ScreenPoint,
  touch: boolean,
): PeopleEnd | null {
  const { left, right } = bandOf(one, frame);
  const reach = touch ? 20 : 10;
  // Within the band a handle reaches no further than a quarter of it.
  const within = (right - left) / 4;
  const found = endHandles(one, frame).find((handle) => {
    const inward = handle.end * (handle.px - px) - outside;
    return Math.abs(px - handle.px) <= reach && Math.abs(py - handle.py) <= reach && inward <= within;
  });
  return found?.end ?? null;
}

/** The stretch painted last whose band is under the hand. */
export function peopleAt(
  below: readonly PeopleBelow[],
  frame: Frame,
  { px, py }: ScreenPoint,
  touch: boolean,
): PeopleBelow | undefined {
  const slack = touch ? 12 : 3;
  return below.findLast((one) => {
    const { left, right, top, foot } = bandOf(one, frame);
    return px >= left - slack && px <= right + slack && py >= top - slack && py <= foot + slack;
  });
}
