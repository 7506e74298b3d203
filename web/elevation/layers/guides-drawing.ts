import type { Zone } from '../../../core/job/schema';
import { boxOfObject } from '../../../core/job/shape';
import { countSheets, sheetPitch } from '../../../core/panels/whole-sheets';
import { lengthFigure } from '../../look/figures';
import { sheetsInWords } from '../../zones/sheet-words';
import { toScreen } from '../frame';
import type { Hand } from '../hand.svelte';
import type { Guide } from '../snap';
import { widthOfWords } from './measured-words';
import { acrossOf, condensed, downOf, inks, strokeLine, type Pen } from './pen';

/** px: of the paper behind words on the drawing. */
const [wordsHeight, margin] = [18, 5];
const guideFont = `12px ${condensed}`;
const sizeFont = `600 13px ${condensed}`;

/** A dotted line across the drawing; what it is in line with stands beside it, at the foot or on the left. */
export function paintGuide(pen: Pen, { axis, at, words }: Guide): void {
  const { frame } = pen;
  const width = widthOfWords(guideFont, words) + 2 * margin;
  if (axis === 'x') {
    const x = acrossOf(frame, at * 100);
    strokeLine(pen, [x, 0, x, frame.height], inks['red-lead'], 1, [1, 3]);
    const left = x + 5 + width < frame.width ? x + 5 : x - 5 - width;
    paintWords(pen, guideFont, words, left, frame.height - wordsHeight);
  } else {
    const y = downOf(frame, at * 100);
    strokeLine(pen, [0, y, frame.width, y], inks['red-lead'], 1, [1, 3]);
    paintWords(pen, guideFont, words, 6, Math.max(2, Math.min(y - 21, frame.height - 40)));
  }
}

/** Width and height of what is being drawn or resized, and of a zone how many sheets that is. */
export interface SizeWords {
  readonly words: string;
  /** px: the object's upper right corner. */
  readonly px: number;
  readonly py: number;
}

/** Null while nothing gets another size. */
export function sizeInHand(hand: Hand): SizeWords | null {
  const object = hand.lifted?.sized && hand.find(hand.lifted.ref);
  if (!object) return null;
  const { x, y, width, height } = boxOfObject(object);
  const sheet = sheetPitch(hand.open.job, (object as Zone).layout);
  const sheets = sheet ? `, ${sheetsInWords(countSheets({ width, height }, sheet))}` : '';
  return {
    words: `${lengthFigure(width)} × ${lengthFigure(height)}${sheets}`,
    ...toScreen(hand.view.frame, { x: x + width, y: y + height }),
  };
}

/** Beside the corner, and always on the drawing. */
export function paintSize(pen: Pen, { words, px, py }: SizeWords): void {
  const width = widthOfWords(sizeFont, words) + 2 * margin;
  const across = Math.max(4, Math.min(px + 18, pen.frame.width - width - 4));
  const down = Math.max(2, Math.min(py - 9, pen.frame.height - wordsHeight - 2));
  paintWords(pen, sizeFont, words, across, down);
}

/** On paper, px from its upper left corner. */
function paintWords({ context }: Pen, font: string, words: string, left: number, top: number): void {
  context.font = font;
  context.textAlign = 'left';
  context.textBaseline = 'middle';
  context.fillStyle = inks.paper;
  context.fillRect(left, top, widthOfWords(font, words) + 2 * margin, wordsHeight);
  context.fillStyle = inks['red-lead'];
  context.fillText(words, left + margin, top + wordsHeight / 2 + 1);
}
