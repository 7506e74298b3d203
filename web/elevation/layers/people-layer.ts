import type { PeopleBelow } from '../../../core/job/hung-schema';
import { kindWordsOfPeople } from '../../../core/job/people-below';
import { bandHeight, bandOf, endHandles } from '../people-band';
import { condensed, inks, paintSquare, strokeLine, type Pen } from './pen';

/** px: how far apart the strokes of a band are. */
const pitch = 8;

/** Stretches of the wall with people under them: a hatched band at their foot, with its word. */
export function paintPeopleBelow(pen: Pen, below: readonly PeopleBelow[]): void {
  for (const one of below) paintBand(pen, one, inks.soft);
}

/** The chosen one, over the others, with handles at its ends. */
export function paintChosenPeople(pen: Pen, one: PeopleBelow): void {
  paintBand(pen, one, inks['red-lead']);
  for (const { px, py } of endHandles(one, pen.frame)) paintSquare(pen, px, py, inks.paper);
}

function paintBand(pen: Pen, one: PeopleBelow, ink: string): void {
  const { context, frame } = pen;
  const { left, right, top, foot } = bandOf(one, frame);
  context.save();
  context.beginPath();
  context.rect(left, top, right - left, bandHeight);
  context.clip();
  for (let at = left - bandHeight; at < right; at += pitch)
    strokeLine(pen, [at, foot, at + bandHeight, top], ink, 1);
  context.restore();
  context.strokeStyle = ink;
  context.lineWidth = ink === inks.soft ? 1 : 2;
  context.strokeRect(left, top, right - left, bandHeight);
  paintWord(pen, kindWordsOfPeople[one.kind], left, right, (top + foot) / 2);
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
