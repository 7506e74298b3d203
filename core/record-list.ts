import Papa from 'papaparse';
import * as v from 'valibot';
import type { Column } from './record-columns';

/** What is wrong with a row of a list. */
export interface RowFault {
  /** Of the file, from 1; the headings are row 1. */
  readonly row: number;
  /** Its heading; empty where the row as a whole is meant. */
  readonly column: string;
  /** What is wrong and how to mend it, in a sentence. */
  readonly text: string;
}

/** What a list is of. */
export interface ListKind<T extends { readonly id: string }> {
  readonly columns: readonly Column<T>[];
  /** Headings that cannot be missing. */
  readonly needed: readonly string[];
  readonly schema: v.GenericSchema<unknown, T>;
}

export interface ReadList<T> {
  /** Of all rows that can be read, in their order. */
  readonly records: readonly T[];
  readonly faults: readonly RowFault[];
}

/**
 * A list as CSV: RFC 4180, CRLF, first line the headings with their units, figures with a decimal point. Text that a
 * spreadsheet would run as a formula begins with an apostrophe, which reading takes off again.
 */
export function writeList<T extends { readonly id: string }>(
  { columns }: ListKind<T>,
  records: readonly T[],
): string {
  const rows = records.map((record) => columns.map(({ write }) => guarded(write(record))));
  return `${Papa.unparse({ fields: columns.map(({ name }) => name), data: rows }, { newline: '\r\n' })}\r\n`;
}

/**
 * Records of a list as `writeList` gives it, or as a spreadsheet saved it: columns in any order, commas or semicolons,
 * columns that are not known left alone, decimal commas read where semicolons part the columns. Rows with a fault are left
 * out and told; the others are read.
 */
export function readList<T extends { readonly id: string }>(kind: ListKind<T>, text: string): ReadList<T> {
  const columnNames = kind.columns.map(({ name }) => name);
  const plain = text.replace(/^\uFEFF/, '');
  const delimiter = delimiterOf(plain);
  const { data } = Papa.parse<string[]>(plain, { delimiter, skipEmptyLines: false });
  const [headings = [], ...rows] = data;
  const names = headings.map((heading) => known(columnNames, heading));
  const missing = kind.needed.filter((name) => !names.includes(name));
  const twice = columnNames.find((name) => names.filter((one) => one === name).length > 1);
  if (missing.length > 0 || twice) {
    const says = twice
      ? `The column “${twice}” is there twice; take one of them out.`
      : `The first row lacks the ${missing.length === 1 ? 'heading' : 'headings'} ${missing.join(', ')}; put the headings of an exported list into it.`;
    return { records: [], faults: [{ row: 1, column: twice ?? '', text: says }] };
  }
  const isDecimalComma = delimiter !== ',';
  const records: T[] = [];
  const faults: RowFault[] = [];
  const rowOf = new Map<string, number>();
  rows.forEach((cells, i) => {
    const row = i + 2;
    if (cells.every((cell) => cell.trim() === '')) return;
    const read = readRow(kind, cells, names, isDecimalComma);
    if ('faults' in read) {
      const place = ({ column }: CellFault) => names.indexOf(column);
      const inOrder = [...read.faults].sort((one, other) => place(one) - place(other));
      faults.push(...inOrder.map((fault) => ({ row, ...fault })));
      return;
    }
    const earlier = rowOf.get(read.record.id);
    if (earlier !== undefined) {
      const says = `Row ${earlier} has the id “${read.record.id}” already; give one of them another.`;
      faults.push({ row, column: 'id', text: says });
      return;
    }
    rowOf.set(read.record.id, row);
    records.push(read.record);
  });
  return { records, faults };
}

/** The headings tell: none of them has one of these in its name. */
function delimiterOf(text: string): string {
  const [first = ''] = text.split(/\r\n|\r|\n/, 1);
  const count = (one: string) => first.split(one).length;
  return [',', ';', '\t'].reduce((best, one) => (count(one) > count(best) ? one : best));
}

/** A heading as the columns here have it, whatever its capitals. */
function known(columnNames: readonly string[], heading: string): string {
  const plain = heading.trim().toLowerCase();
  return columnNames.find((name) => name.toLowerCase() === plain) ?? plain;
}

type CellFault = Omit<RowFault, 'row'>;

function readRow<T extends { readonly id: string }>(
  { columns, schema }: ListKind<T>,
  cells: readonly string[],
  names: readonly string[],
  isDecimalComma: boolean,
): { record: T } | { faults: readonly CellFault[] } {
  const faults: CellFault[] = [];
  const fields: Record<string, unknown> = {};
  if (cells.length > names.length) {
    const says = `The row has ${cells.length} cells and the headings are ${names.length}; put text with a comma into quotation marks.`;
    return { faults: [{ column: '', text: says }] };
  }
  for (const column of columns) {
    const cell = unguarded(cells[names.indexOf(column.name)] ?? '').trim();
    if (cell === '') continue;
    const value = column.read(cell, isDecimalComma);
    if (value === undefined) {
      faults.push({ column: column.name, text: `“${shortened(cell)}” is not ${column.wants}.` });
    } else put(fields, column, value);
  }
  if (faults.length > 0) return { faults };
  const parsed = v.safeParse(schema, fields);
  if (parsed.success) return { record: parsed.output };
  return {
    faults: parsed.issues.map((issue) => {
      const path = (issue.path ?? []).map(({ key }) => String(key));
      const column =
        columns.find(({ at }) => at.join() === path.slice(0, at.length).join() && path.length >= at.length) ??
        columns.find(({ at }) => at[0] === path[0]);
      const given = column && unguarded(cells[names.indexOf(column.name)] ?? '').trim();
      const text = given
        ? `“${shortened(given)}” is not ${column.wants}.`
        : `It is empty; give ${column?.wants ?? 'a value'}.`;
      return { column: column?.name ?? '', text };
    }),
  };
}

function put(
  fields: Record<string, unknown>,
  { at }: Pick<Column<{ id: string }>, 'at'>,
  value: unknown,
): void {
  let target = fields;
  for (const key of at.slice(0, -1)) target = (target[key] ??= {}) as Record<string, unknown>;
  target[at.at(-1)!] = value;
}

function shortened(cell: string): string {
  return cell.length > 40 ? `${cell.slice(0, 40)}…` : cell;
}

/** A spreadsheet runs what begins so, unless it is a figure. */
function guarded(cell: string): string {
  const isFigure = /^-?\d+(\.\d+)?$/.test(cell);
  return /^['=+\-@\t\r]/.test(cell) && !isFigure ? `'${cell}` : cell;
}

function unguarded(cell: string): string {
  return /^'['=+\-@\t\r]/.test(cell) ? cell.slice(1) : cell;
}
