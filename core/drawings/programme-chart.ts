import { dayOf, lastDayOf } from '../programme/calendar';
import type { Settings } from '../programme/settings';
import type { Mm } from '../units';
import type { Item, Text, TextMeasure } from './page';
import { acrossAt, drawAxis, timeAxis, type TimeAxis } from './programme-axis';
import { drawTask } from './programme-marks';
import type { ChartRow, ChartTask } from './programme-rows';
import { fitText } from './text';

/** Where what stands; widths include the gap after them. */
const columns = { name: 104, begins: 31, ends: 31, float: 16 } as const;
const tableWidth: Mm = columns.name + columns.begins + columns.ends + columns.float;
const rowHeight: Mm = 4.8;
const headHeight: Mm = 6;
const textHeight = 2.5;
const gap: Mm = 2;

/** Height of a chart of so many rows, with its heading. */
export function chartHeight(rows: number): Mm {
  return headHeight + rows * rowHeight;
}

/** How many rows go into a height. */
export function rowsThatFit(height: Mm): number {
  return Math.max(1, Math.floor((height - headHeight) / rowHeight));
}

/** Days from the first to the last of all rows, so that every page has the same. */
export function chartAxis(rows: readonly ChartRow[], settings: Settings, left: Mm, width: Mm): TimeAxis {
  let first = Infinity;
  let last = -Infinity;
  for (const row of rows) {
    if (row.kind === 'group') continue;
    first = Math.min(first, dayOf(row.start));
    for (const { finish } of [row, ...row.waits]) last = Math.max(last, lastDayOf(finish), dayOf(row.start));
  }
  return timeAxis(left + tableWidth, width - tableWidth, first, last, settings);
}

/** A bar chart: a line for every row, its words at the left and its bar under the days. */
export function drawChart(
  rows: readonly ChartRow[],
  axis: TimeAxis,
  left: Mm,
  top: Mm,
  measure: TextMeasure,
): Item[] {
  const under = top - headHeight;
  const right = axis.left + axis.perDay * (axis.last + 1 - axis.first);
  const headings: readonly [string, Mm][] = [
    ['Task', 0],
    ['Begins', columns.name],
    ['Ends', columns.name + columns.begins],
    ['Float', columns.name + columns.begins + columns.ends],
  ];
  return [
    ...drawAxis(axis, under, under - rows.length * rowHeight, measure),
    ...headings.map(([text, x]): Text => ({
      kind: 'text',
      text,
      at: { x: left + x, y: under + 1.2 },
      height: textHeight,
      face: 'condensed',
      weight: 'semi-bold',
      colour: 'soft',
    })),
    rule(left, right, under),
    ...rows.flatMap((row, i) => {
      const middle = under - (i + 0.5) * rowHeight;
      const words = row.kind === 'group' ? groupWords(row.text, left, middle) : taskWords(row, left, middle);
      return [
        ...words.map(([text, width]) => fitText(text, width, measure)),
        ...(row.kind === 'task' ? drawTask(row, (minute) => acrossAt(axis, minute), middle) : []),
        rule(left, row.kind === 'group' ? axis.left - gap : right, middle - rowHeight / 2),
      ];
    }),
  ];
}

type Fitted = readonly [Text, width: Mm];

function groupWords(text: string, left: Mm, middle: Mm): Fitted[] {
  return [[{ ...at(text, left, middle), weight: 'semi-bold' }, tableWidth - gap]];
}

function taskWords({ name, begins, ends, float, critical }: ChartTask, left: Mm, middle: Mm): Fitted[] {
  const style = critical ? ({ weight: 'semi-bold' } as const) : {};
  const ended = left + columns.name + columns.begins;
  return [
    [{ ...at(name, left + gap, middle), ...style }, columns.name - 2 * gap],
    [at(begins, left + columns.name, middle), columns.begins - gap],
    [at(ends, ended, middle), columns.ends - gap],
    [{ ...at(float, ended + columns.ends, middle), ...style }, columns.float - gap],
  ];
}

function at(text: string, x: Mm, middle: Mm): Text {
  return { kind: 'text', text, at: { x, y: middle - textHeight / 2 }, height: textHeight };
}

function rule(from: Mm, to: Mm, y: Mm): Item {
  return {
    kind: 'stroke',
    points: [
      { x: from, y },
      { x: to, y },
    ],
    width: 0.18,
    colour: 'soft',
  };
}
