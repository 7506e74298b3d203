/** Rows that are drawn: from `first`, `count` of them, with the height of what is left out above and below. */
export interface RowWindow {
  readonly first: number;
  readonly count: number;
  readonly above: number;
  readonly below: number;
}

/** Up to this many all are drawn, and the browser's own search finds them; the words of a row cost work. */
const mostDrawn = 120;
const margin = 12;

/** What of a long table is drawn when it is scrolled to `top` and `height` of it shows; all rows equally high. */
export function windowOfRows(rows: number, rowHeight: number, top: number, height: number): RowWindow {
  if (rows <= mostDrawn) return { first: 0, count: rows, above: 0, below: 0 };
  const visible = Math.ceil(height / rowHeight) + 2 * margin;
  const first = Math.max(0, Math.min(rows - visible, Math.floor(top / rowHeight) - margin));
  const count = Math.min(visible, rows - first);
  return { first, count, above: first * rowHeight, below: (rows - first - count) * rowHeight };
}
