import type { Mm } from '../units';
import type { Item, Text, TextMeasure } from './page';
import { wrapText } from './text';

/*
 * A table that runs over pages: entries wrap, groups keep with their first row, every page repeats the heading.
 */

export interface FlowColumn {
  readonly heading: string;
  /** Figures stand at the right. */
  readonly align: 'left' | 'right';
  /** Gap to the next column included. */
  readonly width: Mm;
}

/** A column that is as wide as its widest entry. */
export interface FittedColumn extends Omit<FlowColumn, 'width'> {
  /** At most this wide, without the gap; longer entries wrap. */
  readonly most?: Mm;
}

export type FlowRow =
  /** `strong`: in semi-bold. */
  | { readonly kind: 'row'; readonly cells: readonly string[]; readonly strong?: boolean }
  /** A line across the whole table, `aside` at its right end. */
  | { readonly kind: 'group'; readonly text: string; readonly aside?: string };

/** Something of known height that does not know yet where it stands. */
export interface FlowBlock {
  readonly height: Mm;
  readonly at: (left: Mm, top: Mm) => Item[];
  /** Never the last of a page while something follows. */
  readonly keepWithNext?: boolean;
}

const height = 2.5;
const lineHeight: Mm = 4;
const padding: Mm = 1.3;
export const columnGap: Mm = 3;
/** Where columns are no wider than their entries the gap is all that parts them. */
const fittedGap: Mm = 4;

export function flowTableWidth(columns: readonly FlowColumn[]): Mm {
  return columns.reduce((sum, { width }) => sum + width, 0);
}

const headingStyle = { face: 'condensed', weight: 'semi-bold', colour: 'soft' } as const;
const strongStyle = { weight: 'semi-bold' } as const;

/** Columns no wider than their headings and entries ask for. */
export function fitColumns(
  columns: readonly FittedColumn[],
  rows: readonly FlowRow[],
  measure: TextMeasure,
): FlowColumn[] {
  return columns.map(({ heading, align, most = Infinity }, c) => {
    const widest = rows.reduce(
      (wide, row) =>
        row.kind === 'group'
          ? wide
          : Math.max(wide, measure(row.cells[c] ?? '', height, row.strong ? strongStyle : {})),
      measure(heading, height, headingStyle),
    );
    // A hair more, so that the widest entry is not wrapped by binary dust.
    const gap = c === columns.length - 1 ? 0 : fittedGap;
    return { heading, align, width: Math.min(widest, most) + gap + 1e-6 };
  });
}

export function layHeading(columns: readonly FlowColumn[], measure: TextMeasure): FlowBlock {
  return layCells(
    columns,
    columns.map(({ heading }) => heading),
    headingStyle,
    0.35,
    measure,
  );
}

export function layRows(
  columns: readonly FlowColumn[],
  rows: readonly FlowRow[],
  measure: TextMeasure,
): FlowBlock[] {
  return rows.map((row) =>
    row.kind === 'group'
      ? layGroup(columns, row, measure)
      : layCells(columns, row.cells, row.strong ? strongStyle : {}, 0.18, measure),
  );
}

/**
 * Blocks dealt out to pages in order. A block that is higher than a page gets a page of its own.
 *
 * @param room height for blocks on a page; the first page may differ
 */
export function dealOut(blocks: readonly FlowBlock[], room: Mm, firstRoom: Mm = room): FlowBlock[][] {
  const pages: FlowBlock[][] = [];
  let page: FlowBlock[] = [];
  let left = firstRoom;
  for (let i = 0; i < blocks.length;) {
    const chain = chainAt(blocks, i);
    const needed = chain.reduce((sum, block) => sum + block.height, 0);
    if (needed > left + 1e-9 && page.length > 0) {
      pages.push(page);
      page = [];
      left = room;
    } else if (needed > left + 1e-9 && pages.length === 0 && left < room) {
      // Nothing fits on a first page that is shorter than the others: leave it to what stands above.
      pages.push([]);
      left = room;
    }
    page.push(...chain);
    left -= needed;
    i += chain.length;
  }
  if (page.length > 0 || pages.length === 0) pages.push(page);
  return pages;
}

/** Blocks one under the other. */
export function stack(blocks: readonly FlowBlock[], left: Mm, top: Mm): Item[] {
  let y = top;
  return blocks.flatMap((block) => {
    const items = block.at(left, y);
    y -= block.height;
    return items;
  });
}

export function heightOf(blocks: readonly FlowBlock[]): Mm {
  return blocks.reduce((sum, block) => sum + block.height, 0);
}

function chainAt(blocks: readonly FlowBlock[], from: number): FlowBlock[] {
  let to = from;
  while (blocks[to]?.keepWithNext && to + 1 < blocks.length) to++;
  return blocks.slice(from, to + 1);
}

function layGroup(
  columns: readonly FlowColumn[],
  { text, aside = '' }: Extract<FlowRow, { kind: 'group' }>,
  measure: TextMeasure,
): FlowBlock {
  const width = flowTableWidth(columns);
  const asideWidth = aside ? measure(aside, height, {}) + columnGap : 0;
  const lines = wrapText(text, width - asideWidth, height, { weight: 'semi-bold' }, measure);
  const above = 3.2;
  return {
    height: above + lines.length * lineHeight + 2 * padding - (lineHeight - height) + 0.3,
    keepWithNext: true,
    at: (left, top) => {
      const first = top - above - padding - height;
      const bottom = first - (lines.length - 1) * lineHeight - padding - 0.3;
      const words = lines.map((line, i): Text => ({
        kind: 'text',
        text: line,
        at: { x: left, y: first - i * lineHeight },
        height,
        weight: 'semi-bold',
      }));
      const end: Item[] = aside
        ? [
            {
              kind: 'text',
              text: aside,
              at: { x: left + width, y: first },
              height,
              anchor: 'end',
              colour: 'soft',
            },
          ]
        : [];
      return [...words, ...end, rule(left, width, bottom, 0.25)];
    },
  };
}

function layCells(
  columns: readonly FlowColumn[],
  cells: readonly string[],
  style: Pick<Text, 'face' | 'weight' | 'colour'>,
  ruleWidth: 0.18 | 0.35,
  measure: TextMeasure,
): FlowBlock {
  // The last column ends flush with the rules.
  const gapAfter = (c: number) => (c === columns.length - 1 ? 0 : columnGap);
  const last = columns.findLastIndex((_, c) => (cells[c] ?? '') !== '');
  // Nothing follows the last entry: it may run on to the end of the row.
  const widthFrom = (c: number) =>
    c === last && columns[c]!.align === 'left'
      ? flowTableWidth(columns.slice(c))
      : columns[c]!.width - gapAfter(c);
  const wrapped = columns.map((_, c) =>
    wrapText(cells[c] ?? '', widthFrom(c), height, { face: style.face, weight: style.weight }, measure),
  );
  const lines = Math.max(1, ...wrapped.map((cell) => cell.length));
  const total = lines * lineHeight + 2 * padding - (lineHeight - height) + 0.3;
  return {
    height: total,
    at: (left, top) => {
      let x = left;
      const texts = columns.flatMap(({ align, width }, c): Text[] => {
        const at = align === 'left' ? x : x + width - gapAfter(c);
        x += width;
        return wrapped[c]!.filter(Boolean).map((line, i) => ({
          kind: 'text',
          text: line,
          at: { x: at, y: top - padding - height - i * lineHeight },
          height,
          anchor: align === 'left' ? 'start' : 'end',
          ...style,
        }));
      });
      return [...texts, rule(left, flowTableWidth(columns), top - total, ruleWidth)];
    },
  };
}

function rule(left: Mm, width: Mm, y: Mm, weight: 0.18 | 0.25 | 0.35): Item {
  return {
    kind: 'stroke',
    points: [
      { x: left, y },
      { x: left + width, y },
    ],
    width: weight,
    colour: weight === 0.18 ? 'soft' : 'ink',
  };
}
