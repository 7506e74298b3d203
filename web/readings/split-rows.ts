import Papa from 'papaparse';

/** A line that holds something. */
export interface TextRow {
  /** From 1, blank lines counted. */
  readonly line: number;
  readonly text: string;
  readonly cells: readonly string[];
}

/**
 * Lines of a spreadsheet's clipboard (tabs), of a CSV file (semicolons or commas) or of a hand (spaces), each in its cells.
 * A line without the mark that parts the others was added by hand. A comma between two digits parts decimals wherever something else parts the cells.
 *
 * @param names of kinds that may have figures in them, which begin a cell of their own all the same
 */
export function splitRows(text: string, names: readonly string[] = []): TextRow[] {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const mark = ['\t', ';', '|'].find((one) => text.includes(one));
  return lines.flatMap((line, i): TextRow[] => {
    if (line.trim() === '') return [];
    const cells =
      mark && line.includes(mark)
        ? cellsBetween(line, mark)
        : (cellsBySpaces(line, names) ?? cellsBetween(line, ','));
    return [{ line: i + 1, text: line, cells: cells.map((cell) => cell.trim()) }];
  });
}

/** A quotation mark at the end of a cell means inches, not a quoted cell. */
function cellsBetween(line: string, mark: string): readonly string[] {
  const isQuoted = line.split(mark).some((cell) => /^\s*"/.test(cell));
  if (!isQuoted) return line.split(mark);
  return Papa.parse<string[]>(line, { delimiter: mark }).data[0] ?? [];
}

const metric = String.raw`(?:\d+(?:[.,]\d+)?|[.,]\d+)(?:\s*(?:mm|cm|m))?`;
/** With the mark of inches: without it they could be the next length. */
const inches = String.raw`(?:\d+(?:\s+\d+/\d+|[.,]\d+)?|\d+/\d+)\s*["”″]`;
const feet = String.raw`\d+(?:[.,]\d+)?\s*['’′](?:\s*-?\s*${inches})?`;
const length = new RegExp(`^(?:to\\s+)?[+−-]?(?:${feet}|${inches}|${metric})(?=\\s|$)`, 'i');

/** Words, then lengths with their units; null for any other line. */
function cellsBySpaces(line: string, names: readonly string[]): string[] | null {
  const found =
    afterName(line.trim(), names) ??
    /^\s*(\p{L}[\p{L} -]*?)\s+((?:to\s+)?[+−-]?[\d.].*)$/iu.exec(line)?.slice(1);
  if (!found) return null;
  const [words, rest] = found;
  const cells = [words!];
  for (let left = rest!.trim(); left !== '';) {
    // What is no length is a cell all the same, so that its column can be named.
    const [taken] = length.exec(left) ?? /^\S+/.exec(left)!;
    cells.push(taken);
    left = left.slice(taken.length).trim();
  }
  return cells;
}

/** The longest of the names that the line begins with, and what follows it. */
function afterName(line: string, names: readonly string[]): [string, string] | undefined {
  const begins = names.filter((name) => line.toLowerCase().startsWith(`${name.toLowerCase()} `));
  const name = begins.sort((a, b) => b.length - a.length)[0];
  return name === undefined ? undefined : [name, line.slice(name.length)];
}
