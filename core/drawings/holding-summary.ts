import { timesFigure, type ItemState } from '../holding/calculation-words';
import { sentence as capital } from '../job/names';
import type { LengthUnits } from '../lengths';
import type { Mm } from '../units';
import { rule } from './client-blocks';
import { dealColumns, type ColumnTable } from './deal-columns';
import { columnGap, type FlowBlock } from './flow-table';
import type { CheckedItem } from './holding-item';
import { keyPlanRows } from './holding-key-plan';
import { comma, governing, markedNames, safeWeight, stateOfCheck, whatToDoBriefly } from './holding-words';
import type { Item, Text, TextMeasure, TextStyle } from './page';
import { sentenceOnPaper } from './paper-figures';
import { stateMark } from './state-mark';
import { wrapText } from './text';

/** Sheets on which an item stands, and its calculation; undefined: it has none. */
export interface SheetsOf {
  readonly own: number;
  readonly calculation: number | undefined;
}

const states: readonly ItemState[] = [
  'holds',
  'holds only if tested',
  'does not hold',
  'cannot be judged',
  'screwed to a fixing point',
];
const height = 2.5;
const lineHeight: Mm = 4;
const markWidth: Mm = 5.5;

/**
 * All items at a glance: how many are in which state, where they hang, and a row an item. Each page a list of blocks.
 *
 * @param room height of a page
 */
export function holdingSummary(
  items: readonly CheckedItem[],
  sheetsOf: (item: CheckedItem) => SheetsOf,
  units: LengthUnits | undefined,
  width: Mm,
  room: Mm,
  measure: TextMeasure,
): FlowBlock[][] {
  const columns = columnsOf(width);
  const rows = items.map((item) => itemRow(item, sheetsOf(item), columns, units, width, measure));
  const plan: ColumnTable = {
    head: () => countsBlock(items, measure),
    rows: keyPlanRows(items, width, measure),
  };
  const list: ColumnTable = { head: () => headingRow(columns, width), rows };
  return dealColumns([plan, list], () => room);
}

/** `■ holds 6` for each state; at the same time what the shapes mean. */
function countsBlock(items: readonly CheckedItem[], measure: TextMeasure): FlowBlock {
  return {
    height: 7,
    keepWithNext: true,
    at: (left, top) => {
      let x = left;
      return states.flatMap((state): Item[] => {
        const count = items.filter(({ check }) => stateOfCheck(check) === state).length;
        if (count === 0) return [];
        const words = `${capital(state)}: ${count}`;
        const at = x;
        x += markWidth + measure(words, height, { face: 'condensed' }) + 3;
        return [
          ...stateMark(state, { x: at + 2, y: top - 3.2 }),
          {
            kind: 'text',
            text: words,
            at: { x: at + markWidth - 1, y: top - 4.4 },
            height,
            face: 'condensed',
          },
        ];
      });
    },
  };
}

interface Column {
  readonly heading: string;
  readonly left: Mm;
  readonly width: Mm;
  readonly align?: 'right';
}

function columnsOf(width: Mm): readonly Column[] {
  const widths: readonly (readonly [string, Mm, 'right'?])[] = [
    ['item', 61],
    ['state', 34],
    ['times', 10, 'right'],
    ['asked', 10, 'right'],
    ['governs', 26],
    ['safe weight', 23],
    ['sheet', 7, 'right'],
  ];
  const total = widths.reduce((sum, [, one]) => sum + one, 0);
  let left = 0;
  return widths.map(([heading, share, align]) => {
    const wide = (share / total) * width;
    const column = { heading, left, width: wide, ...(align && { align }) };
    left += wide;
    return column;
  });
}

function headingRow(columns: readonly Column[], width: Mm): FlowBlock {
  return {
    height: 5.6,
    keepWithNext: true,
    at: (left, top) => [
      ...columns.map((column, c) =>
        cell(column, column.heading, left, top - 1.3 - height, c === columns.length - 1, {
          face: 'condensed',
          weight: 'semi-bold',
          colour: 'soft',
        }),
      ),
      rule(left, width, top - 5.6, 0.35, 'ink'),
    ],
  };
}

/** Figures on the first line, what to do under them. */
function itemRow(
  item: CheckedItem,
  sheets: SheetsOf,
  columns: readonly Column[],
  units: LengthUnits | undefined,
  width: Mm,
  measure: TextMeasure,
): FlowBlock {
  const { wall, check, advice } = item;
  const { verdict } = check;
  const state = stateOfCheck(check);
  const governs = governing(check);
  const isSaid = governs !== undefined;
  const cells = [
    markedNames(wall.survey.wall, [check.item]),
    state,
    isSaid ? comma(timesFigure(verdict.factor!)) : '–',
    isSaid ? String(verdict.asked) : '–',
    governs ?? '–',
    safeWeight(check, units) ?? '–',
    String(sheets.own),
  ];
  const wrapped = cells.map((text, c) => {
    const { width: wide } = columns[c]!;
    const room = wide - (c === 0 ? markWidth : 0) - (c === columns.length - 1 ? 0 : columnGap);
    return wrapText(text, room, height, styleOf(c), measure);
  });
  const lines = Math.max(...wrapped.map((cellLines) => cellLines.length));
  const calculation = sheets.calculation === undefined ? '' : ` Calculation: sheet ${sheets.calculation}.`;
  const { zones } = verdict;
  const onZone = zones.length === 0 ? '' : `${zones.length > 1 ? 'Zones' : 'Zone'} ${zones.join(', ')}. `;
  const todo = wrapText(
    `${onZone}${comma(sentenceOnPaper(whatToDoBriefly(check, advice), units))}${calculation}`,
    width - markWidth,
    height,
    { face: 'condensed' },
    measure,
  );
  const total = 0.9 + (lines + todo.length) * lineHeight;
  return {
    height: total,
    at: (left, top) => {
      const baseline = (line: number) => top - 1 - height - line * lineHeight;
      return [
        ...stateMark(state, { x: left + 2, y: baseline(0) + height / 2 }),
        ...wrapped.flatMap((cellLines, c) =>
          cellLines.map((text, i) =>
            cell(columns[c]!, text, left + (c === 0 ? markWidth : 0), baseline(i), c === columns.length - 1, {
              ...styleOf(c),
            }),
          ),
        ),
        ...todo.map((text, i): Text => ({
          kind: 'text',
          text,
          at: { x: left + markWidth, y: baseline(lines + i) },
          height,
          face: 'condensed',
        })),
        rule(left, width, top - total, 0.18, 'soft'),
      ];
    },
  };
}

/** Item and state are what is looked for. */
function styleOf(column: number): TextStyle {
  return { face: 'condensed', ...((column === 0 || column === 1) && { weight: 'semi-bold' }) };
}

function cell(
  { left: at, width, align }: Column,
  text: string,
  left: Mm,
  y: Mm,
  isLast: boolean,
  style: Pick<Text, 'face' | 'weight' | 'colour'>,
): Text {
  const x = left + at + (align === 'right' ? width - (isLast ? 0 : columnGap) : 0);
  return {
    kind: 'text',
    text,
    at: { x, y },
    height,
    ...(align === 'right' && { anchor: 'end' as const }),
    ...style,
  };
}
