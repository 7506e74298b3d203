import type { MmBox } from '../../core/job/shape';
import { toScreen, type Frame } from './frame';

interface PxBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Clear of the handles of what it stands beside, px. */
const gap = 20;

/**
 * Where a note of a given size stands beside a box on the drawing: right of it, left, under or over it, where it
 * covers nothing else on the wall; else where it is whole; else as near to the right as the drawing has room.
 *
 * @param others boxes of what else lies on the wall, mm
 */
export function placeBeside(
  box: MmBox,
  { width, height }: Pick<PxBox, 'width' | 'height'>,
  others: readonly MmBox[],
  frame: Frame,
): { left: number; top: number } {
  const own = boxOnScreen(box, frame);
  const top = Math.max(4, Math.min(own.top + gap, frame.height - height - 4));
  const left = Math.max(4, Math.min(own.left, frame.width - width - 4));
  const places = [
    { left: own.left + own.width + gap, top },
    { left: own.left - gap - width, top },
    { left, top: own.top + own.height + gap },
    // Over the zone's name, which stands over the zone where it finds no place within.
    { left, top: own.top - 2 * gap - height },
  ].map((place) => ({ ...place, width, height }));
  const whole = places.filter((place) => liesIn(place, frame));
  const taken = others.map((other) => boxOnScreen(other, frame));
  const free = whole.find((place) => !taken.some((other) => meet(place, other)));
  const found = free ?? whole[0] ?? { left: frame.width - width - 4, top };
  return { left: found.left, top: found.top };
}

function boxOnScreen({ x, y, width, height }: MmBox, frame: Frame): PxBox {
  const { px, py } = toScreen(frame, { x, y: y + height });
  return { left: px, top: py, width: width * frame.scale, height: height * frame.scale };
}

function liesIn(box: PxBox, frame: Frame): boolean {
  return (
    box.left >= 0 &&
    box.top >= 0 &&
    box.left + box.width <= frame.width &&
    box.top + box.height <= frame.height
  );
}

function meet(a: PxBox, b: PxBox): boolean {
  return (
    a.left < b.left + b.width &&
    b.left < a.left + a.width &&
    a.top < b.top + b.height &&
    b.top < a.top + a.height
  );
}
