import Papa from 'papaparse';
import * as v from 'valibot';
import { product as productSchema, type Product } from '../job/product-schema';
import { columnNames, columns, type Column } from './product-columns';

/** What is wrong with a row of a list of products. */
export interface RowFault {
  /** Of the file, from 1; the headings are row 1. */
  readonly row: number;
  /** Its heading; empty where the row as a whole is meant. */
  readonly column: string;
  /** What is wrong and how to mend it, in a sentence. */
  readonly text: string;
}

export interface ReadProducts {
  /** Of all rows that can be read, in their order. */
  readonly products: readonly Product[];
  readonly faults: readonly RowFault[];
}

/**
 * A list of products as CSV: RFC 4180, CRLF, first line the headings with their units, figures with a decimal point. Text
 * that a spreadsheet would run as a formula begins with an apostrophe, which reading takes off again.
 */
export function writeProducts(products: readonly Product[]): string {
  const rows = products.map((product) => columns.map(({ write }) => guarded(write(product))));
  return `${Papa.unparse({ fields: [...columnNames], data: rows }, { newline: '\r\n' })}\r\n`;
}

/**
 * Products of a list as `writeProducts` gives it, or as a spreadsheet saved it: columns in any order, commas or semicolons,
 * columns that are not known left alone, decimal commas read where semicolons part the columns. Rows with a fault are left
 * out and told; the others are read.
 */
export function readProducts(text: string): ReadProducts {
  const plain = text.replace(/^\uFEFF/, '');
  const delimiter = delimiterOf(plain);
  const { data } = Papa.parse<string[]>(plain, { delimiter, skipEmptyLines: false });
  const [headings = [], ...rows] = data;
  const names = headings.map(known);
  const missing = needed.filter((name) => !names.includes(name));
  const twice = columnNames.find((name) => names.filter((one) => one === name).length > 1);
  if (missing.length > 0 || twice) {
    const says = twice
      ? `The column “${twice}” is there twice; take one of them out.`
      : `The first row lacks the ${missing.length === 1 ? 'heading' : 'headings'} ${missing.join(', ')}; put the headings of an exported list into it.`;
    return { products: [], faults: [{ row: 1, column: twice ?? '', text: says }] };
  }
  const isDecimalComma = delimiter !== ',';
  const products: Product[] = [];
  const faults: RowFault[] = [];
  const rowOf = new Map<string, number>();
  rows.forEach((cells, i) => {
    const row = i + 2;
    if (cells.every((cell) => cell.trim() === '')) return;
    const read = readRow(cells, names, isDecimalComma);
    if ('faults' in read) {
      const place = ({ column }: CellFault) => names.indexOf(column);
      const inOrder = [...read.faults].sort((one, other) => place(one) - place(other));
      faults.push(...inOrder.map((fault) => ({ row, ...fault })));
      return;
    }
    const earlier = rowOf.get(read.product.id);
    if (earlier !== undefined) {
      const says = `Row ${earlier} has the id “${read.product.id}” already; give one of them another.`;
      faults.push({ row, column: 'id', text: says });
      return;
    }
    rowOf.set(read.product.id, row);
    products.push(read.product);
  });
  return { products, faults };
}

/** The headings tell: none of them has one of these in its name. */
function delimiterOf(text: string): string {
  const [first = ''] = text.split(/\r\n|\r|\n/, 1);
  const count = (one: string) => first.split(one).length;
  return [',', ';', '\t'].reduce((best, one) => (count(one) > count(best) ? one : best));
}

/** A heading as the columns here have it, whatever its capitals. */
function known(heading: string): string {
  const plain = heading.trim().toLowerCase();
  return columnNames.find((name) => name.toLowerCase() === plain) ?? plain;
}

const needed = ['id', 'name', 'layer', 'unit'];

type CellFault = Omit<RowFault, 'row'>;

function readRow(
  cells: readonly string[],
  names: readonly string[],
  isDecimalComma: boolean,
): { product: Product } | { faults: readonly CellFault[] } {
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
  const parsed = v.safeParse(productSchema, fields);
  if (parsed.success) return { product: parsed.output };
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

function put(fields: Record<string, unknown>, { at }: Column, value: unknown): void {
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
