/** A column of a list of records. */
export interface Column<T extends object> {
  /** Its heading, with the unit. */
  readonly name: string;
  /** Where its value stands in a record. */
  readonly at: readonly string[];
  /** What a cell must be, as in `… is not a figure above 0`. */
  readonly wants: string;
  /** Empty: the record has no such value. */
  readonly write: (record: T) => string;
  /** undefined: the cell is not what is wanted. */
  readonly read: (cell: string, isDecimalComma: boolean) => unknown;
}

export function words<T extends object>(name: string, at: readonly string[], wants: string): Column<T> {
  return { name, at, wants, write: (record) => textAt(record, at), read: (cell) => cell };
}

export function oneOf<T extends object>(
  name: string,
  at: readonly string[],
  list: readonly string[],
): Column<T> {
  return {
    name,
    at,
    wants: `one of ${list.join(', ')}`,
    write: (record) => textAt(record, at),
    read: (cell) => list.find((one) => one === cell.toLowerCase()),
  };
}

export function figure<T extends object>(
  name: string,
  at: readonly string[],
  wants = 'a figure above 0',
): Column<T> {
  return {
    name,
    at,
    wants,
    write: (record) => textAt(record, at),
    read: figureOf,
  };
}

export function list<T extends object>(
  name: string,
  at: readonly string[],
  of: (record: T) => readonly string[] | undefined,
): Column<T> {
  return {
    name,
    at,
    wants: 'texts parted by |',
    write: (record) => (of(record) ?? []).join(' | '),
    read: (cell) =>
      cell
        .split('|')
        .map((text) => text.trim())
        .filter(Boolean),
  };
}

/** `1.5`, or `1,5` where the file parts its columns otherwise; undefined for anything else. */
export function figureOf(cell: string, isDecimalComma: boolean): number | undefined {
  const plain = isDecimalComma ? cell.trim().replace(',', '.') : cell.trim();
  return /^[-−]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(plain) ? Number(plain.replace('−', '-')) : undefined;
}

function textAt(record: object, at: readonly string[]): string {
  let value: unknown = record;
  for (const key of at) value = (value as Record<string, unknown> | undefined)?.[key];
  return value === undefined ? '' : String(value as string | number);
}
