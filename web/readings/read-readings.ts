import { defaultFitting, defaultOpening, type DefaultObject } from '../../core/job/defaults';
import { isSameName } from '../../core/job/kind-names';
import { fittingKinds, openingKinds, type OwnKind } from '../../core/job/schema';
import type { MmBox } from '../../core/job/shape';
import { kindName } from '../job/changes/names';
import { acceptedLengths } from '../tapes/parse-length';
import { readLength } from '../tapes/read-length';
import { splitRows, type TextRow } from './split-rows';

/** How places along the foot were read: all from one point, or each from the end of the one before. */
export type Reading = 'running' | 'chained';

export type Column = 'kind' | 'name' | 'from left' | 'from floor' | 'width' | 'height';

/** An opening or fitting as it was measured. */
export interface Measured {
  readonly as: 'opening' | 'fitting';
  readonly kind: string;
  readonly name: string;
  readonly box: MmBox;
}

/** A row that was understood, or what is wrong with it and in which cell. */
export type ReadRow = TextRow &
  ({ readonly measured: Measured } | { readonly fault: string; readonly column: Column });

/** Column of each cell, in the order in which a hand writes them. */
const usualColumns: readonly ColumnHead[] = (
  ['kind', 'from left', 'from floor', 'width', 'height'] as const
).map((column) => ({ column, isEnd: false, unit: '' }));

interface ColumnHead {
  readonly column: Column;
  /** The cell says where the thing ends, not how large it is. */
  readonly isEnd: boolean;
  /** What a bare figure in the column is read as. */
  readonly unit: string;
}

/**
 * Rows of tape readings: kind, from left, from floor, width, height, or as a row of heads says. Instead of a width or
 * height a cell may say where it ends (`to 1706`). Of what is left out the usual size and height is taken. Round things
 * are measured to their middle, unless it is said where they end.
 *
 * @param from where the first of chained readings begins, mm from the left
 * @param own kinds of fitting beside the usual ones
 */
export function readReadings(
  text: string,
  reading: Reading,
  from = 0,
  own: readonly OwnKind[] = [],
): ReadRow[] {
  const rows = splitRows(
    text,
    own.map(({ name }) => name),
  );
  const heads = rows[0] && headsOf(rows[0].cells);
  const columns = heads ?? usualColumns;
  if (reading === 'running')
    return (heads ? rows.slice(1) : rows).map((row) => readRow(row, columns, 0, own));
  let end = from;
  let broken: number | undefined;
  return (heads ? rows.slice(1) : rows).map((row): ReadRow => {
    const read = readRow(row, columns, end, own);
    if ('fault' in read) broken ??= row.line;
    else if (broken === undefined) end = endOf(read.measured, own);
    else
      return {
        ...row,
        column: 'from left',
        fault: `It is read from the one before: mend line ${broken} first.`,
      };
    return read;
  });
}

/** Where the next chained reading begins: at the far side, or at the middle of what is read to its middle. */
export function endOf({ as, kind, box }: Measured, own: readonly OwnKind[] = []): number {
  return usualOf(as, kind, own).round ? box.x + box.width / 2 : box.x + box.width;
}

function usualOf(as: Measured['as'], kind: string, own: readonly OwnKind[]): DefaultObject {
  return as === 'opening' ? defaultOpening(kind) : defaultFitting(kind, own);
}

const headWords: readonly (readonly [RegExp, Column, boolean])[] = [
  [/^(kind|what|type)$/, 'kind', false],
  [/^(name|note|remark)$/, 'name', false],
  [/^(from left|left|x)$/, 'from left', false],
  [/^(from floor|floor|sill|y)$/, 'from floor', false],
  [/^(width|wide)$/, 'width', false],
  [/^(to|to right|right)$/, 'width', true],
  [/^(height|high)$/, 'height', false],
  [/^(up to|to height|top|head)$/, 'height', true],
];

/** Undefined if the row is one of readings. */
function headsOf(cells: readonly string[]): (ColumnHead | undefined)[] | undefined {
  const heads = cells.map((cell): ColumnHead | undefined => {
    const [, words, unit = ''] = /^(.*?)[\s,(]*(?:\b(mm|cm|m|in|ft)\)?)?$/i.exec(cell.toLowerCase())!;
    const found = headWords.find(([pattern]) => pattern.test(words!.trim()));
    return found && { column: found[1], isEnd: found[2], unit };
  });
  return heads.filter((head) => head).length >= 2 ? heads : undefined;
}

function readRow(
  row: TextRow,
  columns: readonly (ColumnHead | undefined)[],
  start: number,
  own: readonly OwnKind[],
): ReadRow {
  const fail = (column: Column, fault: string): ReadRow => ({ ...row, fault, column });
  const cellOf = (column: Column) => {
    const filled = columns.findIndex((head, i) => head?.column === column && row.cells[i]);
    return filled < 0 ? undefined : { text: row.cells[filled]!, head: columns[filled]! };
  };
  const beyond = row.cells.slice(columns.length).find((cell) => cell !== '');
  if (beyond)
    return fail(
      columns.at(-1)?.column ?? 'height',
      `“${beyond}” stands beyond the last column: look at what parts the cells.`,
    );
  const found = kindOf(cellOf('kind')?.text ?? '', own);
  if (!found) return fail('kind', `Write what it is: ${kindList(own)}.`);
  const { as, kind } = found;
  const usual = usualOf(as, kind, own);

  const left = readCell(cellOf('from left'), -Infinity, 'Write how far it is from the left');
  if (!left) return fail('from left', `Write how far it is from the left, ${acceptedLengths()}.`);
  if ('fault' in left) return fail('from left', left.fault);
  const floor = readCell(cellOf('from floor'), -Infinity, 'Write how high it is above the floor');
  if (floor && 'fault' in floor) return fail('from floor', floor.fault);
  const across = readCell(cellOf('width'), 0.01, 'Write its width');
  if (across && 'fault' in across) return fail('width', across.fault);
  const up = readCell(cellOf('height'), 0.01, 'Write its height');
  if (up && 'fault' in up) return fail('height', up.fault);

  const x = start + left.value;
  const width = sizeOf(across, start, x, usual.width);
  if (width <= 0) return fail('width', 'It ends to the left of where it begins: look at both figures again.');
  const y = floor?.value ?? (usual.round ? usual.y + usual.height / 2 : usual.y);
  const height = sizeOf(up, 0, y, usual.round ? width : usual.height);
  if (height <= 0) return fail('height', 'It ends below where it begins: look at both figures again.');
  const isToMiddle = (end: typeof across) => usual.round && !end?.isEnd;
  const box = {
    x: isToMiddle(across) ? x - width / 2 : x,
    y: isToMiddle(up) ? y - height / 2 : y,
    width,
    height,
  };
  return { ...row, measured: { as, kind, name: cellOf('name')?.text ?? '', box } };
}

interface ReadCell {
  readonly value: number;
  readonly isEnd: boolean;
}

function readCell(
  cell: { text: string; head: ColumnHead } | undefined,
  least: number,
  wanted: string,
): ReadCell | { fault: string } | undefined {
  if (!cell) return undefined;
  const { text, head } = cell;
  const ends = /^to\s+(.+)$/i.exec(text);
  const figure = (ends?.[1] ?? text).trim();
  const isBare = /^[+−-]?[\d.,\s]+$/.test(figure);
  const isEnd = head.isEnd || ends !== null;
  const typed = readLength(isBare ? `${figure} ${head.unit}` : figure, isEnd ? -Infinity : least, wanted);
  return 'fault' in typed ? typed : { value: typed.value, isEnd };
}

function sizeOf(cell: ReadCell | undefined, start: number, from: number, usual: number): number {
  if (!cell) return usual;
  return cell.isEnd ? Math.round((start + cell.value - from) * 100) / 100 : cell.value;
}

const allKinds = [
  ...openingKinds.map((kind) => ({ as: 'opening', kind }) as const),
  ...fittingKinds.map((kind) => ({ as: 'fitting', kind }) as const),
];

const mostOwnListed = 12;

function kindList(own: readonly OwnKind[]): string {
  const names = own.slice(0, mostOwnListed).map(({ name }) => name);
  return [...allKinds.map(({ as, kind }) => kindName(kind, as)), ...names].join(', ');
}

function kindOf(
  text: string,
  own: readonly OwnKind[],
): { as: 'opening' | 'fitting'; kind: string } | undefined {
  const plain = text.trim().toLowerCase();
  const named =
    own.find(({ name }) => isSameName(name, plain)) ?? own.find(({ name }) => isSameName(`${name}s`, plain));
  if (named) return { as: 'fitting', kind: named.name };
  return allKinds.find(({ as, kind }) => {
    const name = kindName(kind, as);
    return plain === name || plain === `${name}s` || (plain === kind && kind !== 'free');
  });
}
