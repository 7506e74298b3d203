import type { Mm } from '../units';
import type { Item, TextMeasure } from './page';
import type { PaperBox } from './paper';
import type { Schedule } from './setting-out-tables';
import { columnWidths, drawTable, headHeight, rowHeight, rowsThatFit } from './table';

const headingHeight = 8;
const betweenColumns = 12;
const betweenTables = 7;
/** A table is not begun for fewer rows than these unless it has no more. */
const leastRows = 3;

/**
 * Tables one under the other, then in further columns, then on further pages; a table that goes on repeats
 * its heading.
 *
 * @returns the items of each page; [] for no rows
 */
export function flowTables(schedules: readonly Schedule[], space: PaperBox, measure: TextMeasure): Item[][] {
  const pages: Item[][] = [];
  let left = space.left;
  let top = space.top;
  let columnWidth: Mm = 0;
  const newPage = () => {
    pages.push([]);
    left = space.left;
    top = space.top;
    columnWidth = 0;
  };
  for (const { heading, columns, rows } of schedules) {
    const widths = columnWidths(columns, rows, measure);
    const width = widths.reduce((a, b) => a + b, 0);
    let drawn = 0;
    while (drawn < rows.length) {
      if (pages.length === 0) newPage();
      const fits = rowsThatFit(top - headingHeight - space.bottom);
      const full = fits < Math.min(leastRows, rows.length - drawn);
      if (full || left + width > space.right + 0.01) {
        const next = left + columnWidth + betweenColumns;
        const fresh = columnWidth === 0;
        if (columnWidth > 0 && next + width <= space.right) {
          left = next;
          top = space.top;
          columnWidth = 0;
          continue;
        }
        // A table wider than an empty page is drawn all the same: its columns have been limited before.
        if (!fresh) {
          newPage();
          continue;
        }
      }
      const part = rows.slice(drawn, drawn + Math.max(1, fits));
      const page = pages.at(-1)!;
      page.push({
        kind: 'text',
        text: drawn === 0 ? heading : `${heading} (continued)`,
        at: { x: left + 1, y: top - 3.5 },
        height: 3.5,
        weight: 'semi-bold',
      });
      page.push(...drawTable(columns, part, widths, { left, top: top - headingHeight }, measure));
      drawn += part.length;
      columnWidth = Math.max(columnWidth, width);
      top -= headingHeight + headHeight + part.length * rowHeight + betweenTables;
    }
  }
  return pages;
}
