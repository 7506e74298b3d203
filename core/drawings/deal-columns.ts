import type { Mm } from '../units';
import { heightOf, type FlowBlock } from './flow-table';

/** A headed table that may go on in the next column. */
export interface ColumnTable {
  readonly head: (isContinued: boolean) => FlowBlock;
  /** A row that keeps with the next is never the last of a column. */
  readonly rows: readonly FlowBlock[];
}

const betweenTables: Mm = 5;
/** A table is not begun for fewer rows than these unless it has no more. */
const leastRows = 4;

/**
 * Tables one under the other, column by column; one that goes on repeats its heading.
 *
 * @param roomOf height of a column by its number, from 0
 */
export function dealColumns(tables: readonly ColumnTable[], roomOf: (column: number) => Mm): FlowBlock[][] {
  const columns: FlowBlock[][] = [];
  for (const { head, rows } of tables) {
    let rest = rows;
    while (rest.length > 0) {
      const column = columns.at(-1);
      const room = column ? roomOf(columns.length - 1) - heightOf(column) : 0;
      const above = column && column.length > 0 ? betweenTables : 0;
      const top = head(rest !== rows);
      const fits = countFitting(rest, room - above - top.height);
      const isEmpty = column?.length === 0;
      if (!column || (!isEmpty && fits < Math.min(leastRows, rest.length))) {
        columns.push([]);
        continue;
      }
      // A row that is higher than a column stands in one of its own all the same.
      const taken = Math.max(1, fits);
      if (above > 0) column.push({ height: above, at: () => [] });
      column.push(top, ...rest.slice(0, taken));
      rest = rest.slice(taken);
      if (rest.length > 0) columns.push([]);
    }
  }
  return columns;
}

function countFitting(rows: readonly FlowBlock[], room: Mm): number {
  let used = 0;
  const over = rows.findIndex(({ height }) => (used += height) > room + 1e-9);
  let count = over < 0 ? rows.length : over;
  while (count < rows.length && count > 0 && rows[count - 1]!.keepWithNext) count--;
  return count;
}
