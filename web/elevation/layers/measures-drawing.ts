import type { MmPoint } from '../../../core/job/shape';
import { measureWords } from '../../measure/measures.svelte';
import { toScreen } from '../frame';
import { condensed, inks, strokeLine, type Pen } from './pen';

/** A distance as a line with a stroke across each end, its figures beside its middle. */
export function paintMeasure(pen: Pen, from: MmPoint, to: MmPoint, aimed: boolean): void {
  const [a, b] = [toScreen(pen.frame, from), toScreen(pen.frame, to)];
  const dash = aimed ? [5, 4] : [];
  if (a.px !== b.px && a.py !== b.py) {
    // Across and up, as the figures say them.
    strokeLine(pen, [a.px, a.py, b.px, a.py], inks.soft, 1, [2, 3]);
    strokeLine(pen, [b.px, a.py, b.px, b.py], inks.soft, 1, [2, 3]);
  }
  strokeLine(pen, [a.px, a.py, b.px, b.py], inks.ink, 1.5, dash);
  for (const { px, py } of [a, b]) strokeLine(pen, [px - 5, py + 5, px + 5, py - 5], inks.ink, 1.5);
  paintWords(pen, measureWords({ from, to }), (a.px + b.px) / 2, (a.py + b.py) / 2);
}

/** Kept within the drawing, however the line runs. */
function paintWords({ context, frame }: Pen, words: string, px: number, py: number): void {
  context.font = `600 13px ${condensed}`;
  const width = context.measureText(words).width + 10;
  const x = Math.max(width / 2 + 2, Math.min(px, frame.width - width / 2 - 2));
  const y = Math.max(12, Math.min(py, frame.height - 12));
  context.fillStyle = inks.paper;
  context.fillRect(x - width / 2, y - 10, width, 20);
  context.strokeStyle = inks.ink;
  context.lineWidth = 1;
  context.strokeRect(x - width / 2, y - 10, width, 20);
  context.fillStyle = inks.ink;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillText(words, x, y + 0.5);
}
