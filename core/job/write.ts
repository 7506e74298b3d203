import { jobSchema, type Job } from './schema';

/** Longest line that still holds a whole list or object. */
const lineWidth = 110;

/**
 * A job as the text of its file: fields in the order of the format, unknown ones after them as they came, two
 * spaces a level, a point or a small object on one line, a line feed at the end. So a changed figure is one
 * changed line.
 *
 * @throws Error if a number is not finite: JSON would turn it to null, and the file could not be read again
 * @example readJob(writeJob(job)).job // equals job
 */
export function writeJob(job: Job): string {
  return `${print(inOrder(jobSchema, job), 0, '')}\n`;
}

/** What of a schema tells the order of fields; every schema of the library has some of it. */
interface Order {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Order>>;
  readonly item?: Order;
  /** Of every value in a record. */
  readonly value?: Order;
  readonly wrapped?: Order;
  readonly options?: readonly unknown[];
}

function inOrder(schema: Order | undefined, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || !schema) return value;
  if (schema.wrapped) return inOrder(schema.wrapped, value);
  if (Array.isArray(value)) return schema.item ? value.map((entry) => inOrder(schema.item, entry)) : value;
  if (schema.type === 'record') {
    return Object.fromEntries(
      Object.entries(value).map(([key, entry]) => [key, inOrder(schema.value, entry)]),
    );
  }
  const entries = schema.entries ?? unionEntries(schema);
  if (!entries) return value;
  const known = Object.keys(entries).filter((key) => Object.hasOwn(value, key));
  const unknown = Object.keys(value).filter((key) => !Object.hasOwn(entries, key));
  const fields = value as Record<string, unknown>;
  return Object.fromEntries([...known, ...unknown].map((key) => [key, inOrder(entries[key], fields[key])]));
}

/** A union of the format has one object among its options: an arc, or a start that is a point. */
function unionEntries(schema: Order): Order['entries'] {
  if (schema.type !== 'union') return undefined;
  return (schema.options as readonly Order[]).find((option) => option.entries)?.entries;
}

/** @param lead what stands on the line before the value, for its length: indentation and field name */
function print(value: unknown, level: number, lead: string): string {
  if (typeof value !== 'object' || value === null) return scalar(value);
  const line = onOneLine(value, lineWidth - level * 2 - lead.length);
  if (line !== null) return line;
  const inner = '  '.repeat(level + 1);
  const [open, close] = Array.isArray(value) ? '[]' : '{}';
  const lines = Array.isArray(value)
    ? value.map((entry) => inner + print(entry, level + 1, ''))
    : fieldsOf(value).map(([key, entry]) => {
        const name = `${JSON.stringify(key)}: `;
        return inner + name + print(entry, level + 1, name);
      });
  return `${open}\n${lines.join(',\n')}\n${'  '.repeat(level)}${close}`;
}

/** null if the value is a list of objects or too long for the room; looks no further than the room. */
function onOneLine(value: object, room: number): string | null {
  const parts: string[] = [];
  // Braces with their spaces, and the comma that may follow.
  let left = room - 5;
  const list = Array.isArray(value);
  for (const [key, entry] of list ? value.entries() : fieldsOf(value)) {
    const name = typeof key === 'string' ? `${JSON.stringify(key)}: ` : '';
    if (list && isPlainObject(entry) && !('arcTo' in entry)) return null;
    const text =
      typeof entry !== 'object' || entry === null ? scalar(entry) : onOneLine(entry, left - name.length);
    if (text === null) return null;
    parts.push(name + text);
    left -= name.length + text.length + 2;
    if (left < -2) return null;
  }
  if (parts.length === 0) return list ? '[]' : '{}';
  return list ? `[${parts.join(', ')}]` : `{ ${parts.join(', ')} }`;
}

function fieldsOf(value: object): [string, unknown][] {
  return Object.entries(value).filter(([, entry]) => entry !== undefined);
}

function isPlainObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function scalar(value: unknown): string {
  if (typeof value === 'number' && !Number.isFinite(value)) {
    throw new Error(`A job cannot be written while one of its numbers is ${value}.`);
  }
  return JSON.stringify(value) ?? 'null';
}
