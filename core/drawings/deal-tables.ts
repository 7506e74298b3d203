import type { Mm } from '../units';
import {
  fitColumns,
  flowTableWidth,
  heightOf,
  layHeading,
  layRows,
  stack,
  type FlowBlock,
  type FittedColumn,
  type FlowRow,
} from './flow-table';
import type { Item, TextMeasure } from './page';
import type { PaperBox } from './paper';

/** A headed table that may run over several columns and pages. */
export interface Schedule {
  readonly heading: string;
  readonly columns: readonly FittedColumn[];
  readonly rows: readonly FlowRow[];
}

const titleHeight: Mm = 6;
const betweenColumns: Mm = 12;
const betweenTables: Mm = 7;
/** A table is not begun for fewer rows than these unless it has no more. */
const leastRows = 3;

/**
 * Tables one under the other, then in further columns, then on further pages; a table that goes on repeats its heading.
 *
 * @returns the items of each page; [] for no rows
 */
export function dealTables(schedules: readonly Schedule[], space: PaperBox, measure: TextMeasure): Item[][] {
  const pages: Item[][] = [];
  let { left, top } = space;
  /** Widest table of the column in hand; 0 while that is empty. */
  let columnWidth: Mm = 0;
  const startColumn = (at: Mm) => {
    left = at;
    top = space.top;
    columnWidth = 0;
  };
  const startPage = () => {
    pages.push([]);
    startColumn(space.left);
  };
  for (const schedule of schedules) {
    const columns = fitColumns(schedule.columns, schedule.rows, measure);
    const width = flowTableWidth(columns);
    const head = layHeading(columns, measure);
    let rest = layRows(columns, schedule.rows, measure);
    let title = schedule.heading;
    while (rest.length > 0) {
      if (pages.length === 0) startPage();
      const fits = countFitting(rest, top - titleHeight - head.height - space.bottom);
      const isFull = fits < Math.min(leastRows, rest.length) || left + width > space.right + 0.01;
      // A table wider than an empty page is drawn all the same: its columns have been limited before.
      if (isFull && columnWidth > 0) {
        const next = left + columnWidth + betweenColumns;
        if (next + width <= space.right) startColumn(next);
        else startPage();
        continue;
      }
      const part = rest.slice(0, Math.max(1, fits));
      pages.at(-1)!.push(titleAt(title, left, top), ...stack([head, ...part], left, top - titleHeight));
      rest = rest.slice(part.length);
      title = `${schedule.heading} (continued)`;
      columnWidth = Math.max(columnWidth, width);
      top -= titleHeight + head.height + heightOf(part) + betweenTables;
    }
  }
  return pages;
}

function countFitting(rows: readonly FlowBlock[], room: Mm): number {
  let used = 0;
  const over = rows.findIndex(({ height }) => (used += height) > room + 1e-9);
  return over < 0 ? rows.length : over;
}

function titleAt(text: string, left: Mm, top: Mm): Item {
  return { kind: 'text', text, at: { x: left, y: top - 3.5 }, height: 3.5, weight: 'semi-bold' };
}
