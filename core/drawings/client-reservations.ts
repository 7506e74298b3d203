import type { Mm } from '../units';
import type { Item, Text, TextMeasure } from './page';
import { textBlock } from './text';

/** What is not known yet and may change the price, as a list above the notes, in two columns. */
export function reservationBlock(
  reservations: readonly string[],
  { left, bottom, width }: { readonly left: Mm; readonly bottom: Mm; readonly width: Mm },
  measure: TextMeasure,
): { items: Item[]; top: Mm } {
  if (reservations.length === 0) return { items: [], top: bottom };
  const gap = 8;
  const columnWidth = (width - gap) / 2;
  const blocks = reservations.map(
    (text) => (at: Mm, top: Mm) =>
      textBlock(`– ${text}`, { left: at, top, width: columnWidth }, 2.5, { colour: 'ink' }, measure),
  );
  const heights = blocks.map((block) => block(0, 0).height);
  const total = heights.reduce((sum, height) => sum + height, 0);
  // The first column holds half of the text or a little more.
  let split = 0;
  for (let held = 0; split < blocks.length && held < total / 2 - 1e-9; split++) held += heights[split]!;
  const sum = (list: readonly number[]) => list.reduce((all, height) => all + height, 0);
  const high = Math.max(sum(heights.slice(0, split)), sum(heights.slice(split)));
  const stacked = (from: number, to: number, at: Mm) => {
    let top = bottom + high;
    return blocks.slice(from, to).flatMap((block, i) => {
      const { items } = block(at, top);
      top -= heights[from + i]!;
      return items;
    });
  };
  const heading: Text = {
    kind: 'text',
    text: 'Reservations: what has not been recorded yet',
    at: { x: left, y: bottom + high + 1.8 },
    height: 2.5,
    weight: 'semi-bold',
    colour: 'red-lead',
  };
  return {
    items: [heading, ...stacked(0, split, left), ...stacked(split, blocks.length, left + columnWidth + gap)],
    top: bottom + high + 5,
  };
}
