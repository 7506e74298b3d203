import type { MmPoint } from '../../../core/job/shape';
import { toScreen } from '../frame';
import type { Corners } from '../hand.svelte';
import { condensed, inks, strokeLine, type Pen } from './pen';

/** A shape while its corners are set: the edges so far with their lengths, and the edge that is aimed at. */
export function paintCorners(pen: Pen, { placed, next, typed }: Corners): void {
  placed.forEach((corner, i) => {
    const to = placed[i + 1];
    if (to) paintEdge(pen, corner, to, lengthOf(corner, to), false);
  });
  const last = placed.at(-1);
  if (last && next) paintEdge(pen, last, next, typed || lengthOf(last, next), true);
  if (placed.length >= 2 && next) paintEdge(pen, next, placed[0]!, '', true);
  for (const corner of placed) paintCorner(pen, corner, inks['red-lead']);
  if (next) paintCorner(pen, next, inks.paper);
}

function paintEdge(pen: Pen, from: MmPoint, to: MmPoint, words: string, aimed: boolean): void {
  const a = toScreen(pen.frame, from);
  const b = toScreen(pen.frame, to);
  strokeLine(pen, [a.px, a.py, b.px, b.py], inks['red-lead'], aimed ? 1 : 2, aimed ? [5, 4] : []);
  if (!words) return;
  const { context } = pen;
  context.font = `600 13px ${condensed}`;
  const width = context.measureText(words).width + 8;
  const [x, y] = [(a.px + b.px) / 2, (a.py + b.py) / 2];
  context.fillStyle = inks.paper;
  context.fillRect(x - width / 2, y - 9, width, 18);
  context.fillStyle = inks['red-lead'];
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillText(words, x, y + 0.5);
}

function paintCorner({ context, frame }: Pen, at: MmPoint, fill: string): void {
  const { px, py } = toScreen(frame, at);
  context.beginPath();
  context.arc(px, py, 5, 0, 2 * Math.PI);
  context.fillStyle = fill;
  context.fill();
  context.strokeStyle = inks['red-lead'];
  context.lineWidth = 1.5;
  context.stroke();
}

function lengthOf(from: MmPoint, to: MmPoint): string {
  return String(Math.round(Math.hypot(to.x - from.x, to.y - from.y)));
}
