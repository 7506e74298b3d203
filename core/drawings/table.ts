import type { Mm } from '../units';
import type { Item, Text, TextMeasure } from './page';
import { fitText } from './text';

export interface Column {
  readonly heading: string;
  /** Figures stand at the right, so that their units stand under each other. */
  readonly align: 'left' | 'right';
  /** At most this wide; longer entries are condensed, then shortened. */
  readonly most?: Mm;
}

export interface TableRow {
  readonly cells: readonly string[];
  /** Set in semi-bold. */
  readonly strong?: boolean;
}

export const rowHeight: Mm = 5.2;
export const headHeight: Mm = 6.5;
const textHeight = 2.5;
const cellGap = 4;

/** How many rows fit into a height, head included. */
export function rowsThatFit(height: Mm): number {
  return Math.max(0, Math.floor((height - headHeight + 1e-9) / rowHeight));
}

/** Width of each column: its widest entry or heading, within `most`, gap included. */
export function columnWidths(
  columns: readonly Column[],
  rows: readonly TableRow[],
  measure: TextMeasure,
): Mm[] {
  return columns.map(({ heading, most }, c) => {
    const entries = rows.map(({ cells, strong }) =>
      measure(cells[c] ?? '', textHeight, { weight: strong ? 'semi-bold' : 'regular' }),
    );
    const widest = entries.reduce((a, b) => Math.max(a, b), measure(heading, textHeight, headStyle));
    return Math.min(widest, most ?? Infinity) + cellGap;
  });
}

/**
 * A ruled table whose upper left corner is `at`. Give it no more rows than `rowsThatFit`; to keep columns
 * alike over several pages, take the widths from all rows.
 */
export function drawTable(
  columns: readonly Column[],
  rows: readonly TableRow[],
  widths: readonly Mm[],
  at: { readonly left: Mm; readonly top: Mm },
  measure: TextMeasure,
): Item[] {
  const right = at.left + widths.reduce((a, b) => a + b, 0);
  const rule = (y: Mm, width: 0.18 | 0.35): Item => ({
    kind: 'stroke',
    points: [
      { x: at.left, y },
      { x: right, y },
    ],
    width,
    colour: width === 0.35 ? 'ink' : 'soft',
  });
  const rowItems = (
    cells: readonly string[],
    baseline: Mm,
    style: Pick<Text, 'face' | 'weight' | 'colour'>,
  ) => {
    let left = at.left;
    return columns.flatMap(({ align }, c): Text[] => {
      const width = widths[c]!;
      const x = align === 'left' ? left + cellGap / 4 : left + width - (cellGap * 3) / 4;
      left += width;
      const text = cells[c] ?? '';
      if (text === '') return [];
      const anchor = align === 'left' ? 'start' : 'end';
      const entry: Text = {
        kind: 'text',
        text,
        at: { x, y: baseline },
        height: textHeight,
        anchor,
        ...style,
      };
      return [fitText(entry, width - cellGap + 0.01, measure)];
    });
  };
  const items: Item[] = rowItems(
    columns.map(({ heading }) => heading),
    at.top - 4.2,
    { ...headStyle, colour: 'soft' },
  );
  items.push(rule(at.top - headHeight, 0.35));
  rows.forEach(({ cells, strong }, r) => {
    const bottom = at.top - headHeight - (r + 1) * rowHeight;
    items.push(...rowItems(cells, bottom + 1.5, { weight: strong ? 'semi-bold' : 'regular' }));
    items.push(rule(bottom, 0.18));
  });
  return items;
}

const headStyle = { face: 'condensed', weight: 'semi-bold' } as const;
