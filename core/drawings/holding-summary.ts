import { timesFigure, type ItemState } from '../holding/calculation-words';
import { nameOfHung, nameOfWall, sentence as capital } from '../job/names';
import type { LengthUnits } from '../lengths';
import type { Mm } from '../units';
import { rule } from './client-blocks';
import { dealColumns, type ColumnTable } from './deal-columns';
import { columnGap, type FlowBlock } from './flow-table';
import type { ItemOnSheet } from './holding-item';
import { keyPlanRows } from './holding-key-plan';
import { comma, governing, markOfItem, safeWeight, stateOfCheck, whatToDoBriefly } from './holding-words';
import type { Item, Text, TextMeasure } from './page';
import { sentenceOnPaper } from './paper-figures';
import { smallHeading } from './holding-lists';
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
const markWidth: Mm = 6;

/**
 * All items at a glance: how many are in which state, where they hang, and a row an item. Each page a list of blocks.
 *
 * @param room height of a page
 */
export function holdingSummary(
  items: readonly ItemOnSheet[],
  sheetsOf: (item: ItemOnSheet) => SheetsOf,
  units: LengthUnits | undefined,
  width: Mm,
  room: Mm,
  measure: TextMeasure,
): FlowBlock[][] {
  const columns = columnsOf(width);
  const rows = items.flatMap((item, i): FlowBlock[] => [
    ...(items[i - 1]?.wall === item.wall ? [] : [wallRow(item, width)]),
    itemRow(item, sheetsOf(item), columns, units, width, measure),
  ]);
  const plan: ColumnTable = { head: () => countsBlock(items, measure), rows: keyPlanRows(items, width, measure) };
  const list: ColumnTable = { head: () => headingRow(columns, width), rows };
  return dealColumns([plan, list], () => room);
}

/** `■ holds 6` for each state; at the same time what the shapes mean. */
function countsBlock(items: readonly ItemOnSheet[], measure: TextMeasure): FlowBlock {
  return {
    height: 9,
    keepWithNext: true,
    at: (left, top) => {
      let x = left;
      return states.flatMap((state): Item[] => {
        const count = items.filter(({ check }) => stateOfCheck(check) === state).length;
        const words = `${capital(state)}: ${count}`;
        const at = x;
        x += markWidth + measure(words, height, {}) + 5;
        return [
          ...stateMark(state, { x: at + 2, y: top - 3.2 }),
          { kind: 'text', text: words, at: { x: at + markWidth - 1, y: top - 4.4 }, height },
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
    ['item', 46],
    ['zone', 10],
    ['state', 31],
    ['times', 15, 'right'],
    ['asked', 12, 'right'],
    ['governs', 25],
    ['largest weight', 22],
    ['sheet', 9, 'right'],
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

function wallRow({ wall }: ItemOnSheet, width: Mm): FlowBlock {
  const block = smallHeading(capital(nameOfWall(wall.survey.wall)));
  return {
    ...block,
    at: (left, top) => [...block.at(left, top), rule(left, width, top - block.height, 0.25, 'ink')],
  };
}

/** Figures on the first line, what to do under them. */
function itemRow(
  item: ItemOnSheet,
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
  const kind = capital(nameOfHung(check.item).replace(` ${check.item.id}`, ''));
  const cells = [
    `${markOfItem(wall.survey.wall, check.item)} ${kind}`,
    verdict.zones.join(', ') || '–',
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
    return wrapText(text, room, height, c === 0 || c === 2 ? { weight: 'semi-bold' } : {}, measure);
  });
  const lines = Math.max(...wrapped.map((cellLines) => cellLines.length));
  const calculation = sheets.calculation === undefined ? '' : ` Calculation: sheet ${sheets.calculation}.`;
  const todo = wrapText(
    `${comma(sentenceOnPaper(whatToDoBriefly(check, advice), units))}${calculation}`,
    width - markWidth,
    height,
    {},
    measure,
  );
  const total = 1.3 + (lines + todo.length) * lineHeight + 0.4;
  return {
    height: total,
    at: (left, top) => {
      const baseline = (line: number) => top - 1.3 - height - line * lineHeight;
      return [
        ...stateMark(state, { x: left + 2, y: baseline(0) + height / 2 }),
        ...wrapped.flatMap((cellLines, c) =>
          cellLines.map((text, i) =>
            cell(columns[c]!, text, left + (c === 0 ? markWidth : 0), baseline(i), c === columns.length - 1, {
              ...((c === 0 || c === 2) && { weight: 'semi-bold' }),
            }),
          ),
        ),
        ...todo.map(
          (text, i): Text => ({
            kind: 'text',
            text,
            at: { x: left + markWidth, y: baseline(lines + i) },
            height,
          }),
        ),
        rule(left, width, top - total, 0.18, 'soft'),
      ];
    },
  };
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
