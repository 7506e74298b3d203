import type { Frame } from '../frame';
import type { Guide } from '../snap';
import { acrossOf, downOf } from './pen';

/** Words on the drawing: px from its upper left corner. */
export interface WordsAt {
  readonly left: number;
  readonly top: number;
  readonly width: number;
}

/** px */
export const wordsHeight = 18;

/** Beside the object's upper right corner, and always on the drawing. */
export function sizePlace(frame: Frame, px: number, py: number, width: number): WordsAt {
  return {
    left: Math.max(4, Math.min(px + 18, frame.width - width - 4)),
    top: Math.max(2, Math.min(py - 9, frame.height - wordsHeight - 2)),
    width,
  };
}

/**
 * Where the words of a guide stand: at the foot of an upright line, above the left end of a level one; where other
 * words are already, at its other end or on its other side.
 */
export function guidePlace(
  frame: Frame,
  { axis, at }: Pick<Guide, 'axis' | 'at'>,
  width: number,
  taken: WordsAt | null,
): WordsAt {
  const places = axis === 'x' ? besideLine(frame, at, width) : aboveLine(frame, at, width);
  return places.find((place) => !taken || !overlap(place, taken)) ?? places[0]!;
}

function besideLine(frame: Frame, at: number, width: number): readonly WordsAt[] {
  const x = acrossOf(frame, at * 100);
  const left = x + 5 + width < frame.width ? x + 5 : x - 5 - width;
  return [frame.height - wordsHeight, 2].map((top) => ({ left, top, width }));
}

/** Clear of the foot, where those of an upright line stand. */
function aboveLine(frame: Frame, at: number, width: number): readonly WordsAt[] {
  const y = downOf(frame, at * 100);
  const onDrawing = (top: number) => Math.max(2, Math.min(top, frame.height - 40));
  return [
    { left: 6, top: onDrawing(y - 21), width },
    { left: frame.width - width - 6, top: onDrawing(y - 21), width },
    { left: 6, top: onDrawing(y + 10), width },
  ];
}

function overlap(a: WordsAt, b: WordsAt): boolean {
  return a.left < b.left + b.width && b.left < a.left + a.width && Math.abs(a.top - b.top) < wordsHeight;
}
