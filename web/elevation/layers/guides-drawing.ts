import type { Zone } from '../../../core/job/schema';
import { boxOfObject } from '../../../core/job/shape';
import { countSheets, sheetPitch } from '../../../core/panels/whole-sheets';
import { lengthFigure } from '../../look/figures';
import { sheetsInWords } from '../../zones/sheet-words';
import { toScreen, type Frame } from '../frame';
import type { Hand } from '../hand.svelte';
import type { Guide } from '../snap';
import { guidePlace, sizePlace, wordsHeight, type WordsAt } from './guide-places';
import { widthOfWords } from './measured-words';
import { acrossOf, condensed, downOf, inks, strokeLine, type Pen } from './pen';

/** px: of the paper behind words on the drawing. */
const margin = 5;
const guideFont = `12px ${condensed}`;
const sizeFont = `600 13px ${condensed}`;

/** A dotted line across the drawing, with what it is in line with. */
export function paintGuide(pen: Pen, guide: Guide, size: SizeWords | null): void {
  const { frame } = pen;
  const { axis, at, words } = guide;
  if (axis === 'x') {
    const x = acrossOf(frame, at * 100);
    strokeLine(pen, [x, 0, x, frame.height], inks['red-lead'], 1, [1, 3]);
  } else {
    const y = downOf(frame, at * 100);
    strokeLine(pen, [0, y, frame.width, y], inks['red-lead'], 1, [1, 3]);
  }
  const width = widthOfWords(guideFont, words) + 2 * margin;
  paintWords(pen, guideFont, words, guidePlace(frame, guide, width, size && placeOfSize(frame, size)));
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
  const { ref, sized } = hand.lifted ?? {};
  const object = ref && sized && hand.find(ref);
  if (!object) return null;
  const { x, y, width, height } = boxOfObject(object);
  const sheet = sheetPitch(hand.open.job, (object as Zone).layout);
  const sheets = sheet ? `, ${sheetsInWords(countSheets({ width, height }, sheet))}` : '';
  return {
    words: `${lengthFigure(width)} × ${lengthFigure(height)}${sheets}`,
    ...toScreen(hand.view.frame, { x: x + width, y: y + height }),
  };
}

export function paintSize(pen: Pen, size: SizeWords): void {
  paintWords(pen, sizeFont, size.words, placeOfSize(pen.frame, size));
}

function placeOfSize(frame: Frame, { words, px, py }: SizeWords): WordsAt {
  return sizePlace(frame, px, py, widthOfWords(sizeFont, words) + 2 * margin);
}

/** On paper. */
function paintWords({ context }: Pen, font: string, words: string, { left, top, width }: WordsAt): void {
  context.font = font;
  context.textAlign = 'left';
  context.textBaseline = 'middle';
  context.fillStyle = inks.paper;
  context.fillRect(left, top, width, wordsHeight);
  context.fillStyle = inks['red-lead'];
  context.fillText(words, left + margin, top + wordsHeight / 2 + 1);
}
