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
 * covers nothing else; else where it is whole and covers the least; else as near to the right as the drawing has room.
 *
 * @param others boxes of what else lies on the wall, and of the walls beside it, mm
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
  const covered = whole.map((place) => taken.reduce((sum, other) => sum + shared(place, other), 0));
  const found = whole[covered.indexOf(Math.min(...covered))] ?? { left: frame.width - width - 4, top };
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

/** The area two boxes share, px². */
function shared(a: PxBox, b: PxBox): number {
  const across = Math.min(a.left + a.width, b.left + b.width) - Math.max(a.left, b.left);
  const down = Math.min(a.top + a.height, b.top + b.height) - Math.max(a.top, b.top);
  return Math.max(0, across) * Math.max(0, down);
}
