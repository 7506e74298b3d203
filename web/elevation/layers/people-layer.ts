import type { PeopleBelow } from '../../../core/job/hung-schema';
import { kindWordsOfPeople } from '../../../core/job/people-below';
import { acrossOf, condensed, downOf, inks, strokeLine, type Pen } from './pen';

/** px: how high a band stands, and how far apart its strokes are. */
const bandHeight = 15;
const pitch = 8;

/** Stretches of the wall with people under them: a hatched band at their foot, with its word. */
export function paintPeopleBelow(pen: Pen, below: readonly PeopleBelow[]): void {
  const { context, frame } = pen;
  for (const { kind, x, width, y = 0 } of below) {
    const [left, right] = [acrossOf(frame, x * 100), acrossOf(frame, (x + width) * 100)];
    const foot = downOf(frame, y * 100);
    const top = foot - bandHeight;
    context.save();
    context.beginPath();
    context.rect(left, top, right - left, bandHeight);
    context.clip();
    for (let at = left - bandHeight; at < right; at += pitch)
      strokeLine(pen, [at, foot, at + bandHeight, top], inks.soft, 1);
    context.restore();
    context.strokeStyle = inks.soft;
    context.lineWidth = 1;
    context.strokeRect(left, top, right - left, bandHeight);
    paintWord(pen, kindWordsOfPeople[kind], left, right, (top + foot) / 2);
  }
}

function paintWord({ context }: Pen, word: string, left: number, right: number, middle: number): void {
  context.font = `600 13px ${condensed}`;
  const width = context.measureText(word).width + 8;
  if (width > right - left - 4) return;
  const x = (left + right) / 2;
  context.fillStyle = inks.paper;
  context.fillRect(x - width / 2, middle - 8, width, 16);
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillStyle = inks.ink;
  context.fillText(word, x, middle + 0.5);
}
