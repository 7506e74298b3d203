import type { Mm } from '../units';
import type { LineType, LineWidth } from './page';

/**
 * Lengths of dash and gap in turn for a line type, in mm; none for a continuous line.
 * Source: ISO 128-20 (line elements as multiples of the line width: dot ≤ 0.5, gap 3, dash 12, long dash 24),
 * from memory.
 */
export function lineRuns(type: LineType, width: LineWidth): Mm[] {
  return runs[type].map((multiple) => multiple * width);
}

const dot = 0.5;
const gap = 3;
const dash = 12;
const longDash = 24;

const runs: Readonly<Record<LineType, readonly number[]>> = {
  continuous: [],
  dashed: [dash, gap],
  'long-dashed-dotted': [longDash, gap, dot, gap],
  'long-dashed-double-dotted': [longDash, gap, dot, gap, dot, gap],
};
