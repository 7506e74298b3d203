import { calculationParts, type CalculationLine } from '../holding/calculation';
import { calculationFigure, partWords } from '../holding/calculation-words';
import type { Mm } from '../units';
import { rule } from './client-blocks';
import type { ColumnTable } from './deal-columns';
import type { FlowBlock } from './flow-table';
import { comma } from './holding-words';
import { tightParagraph } from './holding-lists';
import type { Text, TextMeasure } from './page';
import { wrapText } from './text';

/*
 * Calculations side by side, as in an engineer's table: each line once with its symbol, words, formula, unit and source, and a
 * column of values for each thing that is calculated. The lettering is the smallest of ISO 3098 and stands in such tables only.
 */

/** One thing that is calculated. */
export interface CalculationColumn {
  readonly name: string;
  readonly lines: readonly CalculationLine[];
}

/** A line of text with a figure or word for each column, before the lines of the calculation. */
export interface ColumnNote {
  readonly symbol: string;
  readonly words: string;
  readonly cells: readonly string[];
}

const height = 1.8;
const lineHeight: Mm = 2.9;
const below: Mm = 0.5;
const symbolWidth: Mm = 10;
const unitWidth: Mm = 8.6;
const sourceWidth: Mm = 6;
const least: Mm = 9;
const widest: Mm = 11;
/** At least so much is left to words and formulas. */
const forWords: Mm = 63.8;
const condensed = { face: 'condensed' } as const;
const strong = { face: 'condensed', weight: 'semi-bold' } as const;

/** How many things stand side by side in a table of that width. */
export function columnsBeside(width: Mm): number {
  return Math.max(1, Math.floor((width - symbolWidth - forWords - unitWidth - sourceWidth) / least));
}

/**
 * @param columns at most `columnsBeside(width)`
 * @param notes said before the lines, one cell a column
 */
export function calculationMatrix(
  title: string,
  columns: readonly CalculationColumn[],
  notes: readonly ColumnNote[],
  sources: readonly string[],
  width: Mm,
  measure: TextMeasure,
): ColumnTable {
  const room = width - symbolWidth - unitWidth - sourceWidth;
  const each = Math.min(widest, (room - forWords) / columns.length);
  const wordsWidth = room - each * columns.length - 1;
  const set = (row: MatrixRow) => layRow(row, { width, wordsWidth, each }, measure);
  const lines = rowsOf(columns);
  return {
    head: (isContinued) => headOf(title, columns, isContinued, { width, each }),
    rows: [
      ...notes.map((note) => set({ ...note, unit: '', source: '' })),
      ...calculationParts.flatMap((part) => {
        const own = lines.filter(({ line }) => line.part === part);
        if (own.length === 0) return [];
        return [
          partRow(partWords[part], width),
          ...own.map(({ line, values }) =>
            set({
              ...line,
              cells: values.map((value) => (value === undefined ? '' : comma(calculationFigure(value)))),
              source: `[${sources.indexOf(line.source) + 1}]`,
            }),
          ),
        ];
      }),
    ],
  };
}

interface MatrixLine {
  readonly line: CalculationLine;
  /** By column; undefined: that one has no such line. */
  readonly values: readonly (number | undefined)[];
}

/** Lines that differ in no more than their value, once. */
function rowsOf(columns: readonly CalculationColumn[]): MatrixLine[] {
  const rows = new Map<string, { line: CalculationLine; values: (number | undefined)[] }>();
  columns.forEach(({ lines }, c) => {
    const times = new Map<string, number>();
    for (const line of lines) {
      const { value, ...definition } = line;
      const said = JSON.stringify(definition);
      const before = times.get(said) ?? 0;
      times.set(said, before + 1);
      const key = `${before} ${said}`;
      const row = rows.get(key) ?? { line, values: columns.map(() => undefined) };
      row.values[c] = value;
      rows.set(key, row);
    }
  });
  return inOrder(columns, [...rows.values()]);
}

/** Symbols as they come in the longest calculation, those that it lacks after it; lines of one symbol together. */
function inOrder(columns: readonly CalculationColumn[], rows: readonly MatrixLine[]): MatrixLine[] {
  const longestFirst = [...columns].sort((a, b) => b.lines.length - a.lines.length);
  const symbols = new Set(longestFirst.flatMap(({ lines }) => lines.map(({ symbol }) => symbol)));
  return [...symbols].flatMap((symbol) => rows.filter(({ line }) => line.symbol === symbol));
}

interface MatrixRow {
  readonly symbol: string;
  readonly words: string;
  readonly formula?: string;
  readonly unit: string;
  readonly cells: readonly string[];
  readonly source: string;
}

interface Measures {
  readonly width: Mm;
  readonly wordsWidth: Mm;
  /** Of a column of values. */
  readonly each: Mm;
}

function layRow(
  { symbol, words, formula, unit, cells, source }: MatrixRow,
  { width, wordsWidth, each }: Measures,
  measure: TextMeasure,
): FlowBlock {
  const asked = measure(symbol, height, strong) + 1.2;
  const start = Math.max(symbolWidth, asked);
  const room = wordsWidth - (start - symbolWidth);
  const wrap = (text: string) => wrapText(text, room, height, condensed, measure);
  const together = wrap(formula === undefined ? comma(words) : `${comma(words)} = ${comma(formula)}`);
  const lines =
    formula === undefined || together.length === 1
      ? together
      : [...wrap(comma(words)), ...wrap(`= ${comma(formula)}`)];
  const total = lines.length * lineHeight + below;
  return {
    height: total,
    at: (left, top) => {
      const text = (said: string, x: Mm, line: number, rest: Partial<Text> = {}): Text => ({
        kind: 'text',
        text: said,
        at: { x: left + x, y: top - below / 2 - height - 0.25 - line * lineHeight },
        height,
        ...condensed,
        ...rest,
      });
      const last = lines.length - 1;
      const units = symbolWidth + wordsWidth + 1;
      return [
        text(symbol, 0, 0, strong),
        ...lines.map((line, i) => text(line, start, i)),
        ...(unit ? [text(unit, units, last)] : []),
        ...cells.flatMap((cell, c) =>
          cell ? [text(cell, units + unitWidth + (c + 1) * each - 0.6, last, { anchor: 'end' })] : [],
        ),
        ...(source ? [text(source, width, last, { anchor: 'end', colour: 'soft' })] : []),
        rule(left, width, top - total, 0.18, 'soft'),
      ];
    },
  };
}

function headOf(
  title: string,
  columns: readonly CalculationColumn[],
  isContinued: boolean,
  { width, each }: Omit<Measures, 'wordsWidth'>,
): FlowBlock {
  const total = 6.6;
  const first = width - sourceWidth - columns.length * each;
  return {
    height: total,
    keepWithNext: true,
    at: (left, top) => [
      {
        kind: 'text',
        text: isContinued ? `${title} (continued)` : title,
        at: { x: left, y: top - 4.6 },
        height: 3.5,
        weight: 'semi-bold',
      },
      ...columns.map(({ name }, c): Text => ({
        kind: 'text',
        text: name,
        at: { x: left + first + (c + 1) * each - 0.6, y: top - 4.6 },
        height,
        anchor: 'end',
        ...strong,
      })),
      rule(left, width, top - total + 0.6, 0.35, 'ink'),
    ],
  };
}

/** What the lines under it are about. */
function partRow(words: string, width: Mm): FlowBlock {
  return {
    height: 3.5,
    keepWithNext: true,
    at: (left, top) => [
      {
        kind: 'text',
        text: words,
        at: { x: left, y: top - 0.9 - height },
        height,
        ...strong,
        colour: 'soft',
      },
      rule(left, width, top - 3.5, 0.18, 'soft'),
    ],
  };
}

/** A row of plain words over the whole width. */
export function wordsRow(words: string, width: Mm, measure: TextMeasure): FlowBlock {
  const block = tightParagraph(words, width, measure);
  return { ...block, height: block.height + 1 };
}
