import { utils, write, type WorkSheet } from '@e965/xlsx';
import Papa from 'papaparse';
import type { WorkedOut } from '../../worked-out';
import { csvTables } from '../csv';
import { pricedTables } from '../priced-tables';

/** What a cell can hold at most (ECMA-376 programs refuse more). */
const longestCell = 32_767;
/** Columns of names and numbers that are names: `07` stays `07`. */
const named =
  /^(mark|delivery|room|wall|zone|stock|sheet|placed_on|item|name|group|order|kind|for|how|entry|unit|currency|bundle|object)$|_name$|_wkt$/;
const dated = /^(\d{4}-\d{2}-\d{2})(?: (\d{2}):(\d{2}))?$/;

/**
 * Every list of a job as one workbook (ECMA-376, SpreadsheetML), a sheet a list: figures as numbers, days and times as dates,
 * columns as wide as what they hold. Text is stored as text, so that no name is ever run as a formula.
 *
 * @returns the bytes of an .xlsx file; the same for the same job
 */
export function writeWorkbook(worked: WorkedOut): Uint8Array<ArrayBuffer> {
  const lists = [
    ...csvTables(worked).map(({ name, text }) => ({ name, text })),
    ...pricedTables(worked)
      .filter(({ name }) => name.endsWith('.csv'))
      .map(({ name, text }) => ({ name: name.slice(0, -4), text })),
  ];
  const book = utils.book_new();
  for (const { name, text } of lists) {
    const words = name.replaceAll('-', ' ');
    utils.book_append_sheet(book, sheetOf(text), words.charAt(0).toUpperCase() + words.slice(1));
  }
  const bytes = write(book, {
    type: 'array',
    bookType: 'xlsx',
    bookSST: true,
    compression: true,
  }) as ArrayBuffer;
  return new Uint8Array(bytes);
}

function sheetOf(text: string): WorkSheet {
  const [headings = [], ...rows] = Papa.parse<string[]>(text, { skipEmptyLines: true }).data;
  const sheet = utils.aoa_to_sheet([headings]);
  rows.forEach((row, r) => {
    row.forEach((value, c) => {
      if (value !== '') sheet[utils.encode_cell({ r: r + 1, c })] = cellOf(value, headings[c]!);
    });
  });
  sheet['!ref'] = utils.encode_range({ r: 0, c: 0 }, { r: rows.length, c: Math.max(0, headings.length - 1) });
  sheet['!cols'] = headings.map((heading, c) => {
    const longest = rows.reduce((most, row) => Math.max(most, row[c]?.length ?? 0), heading.length);
    return { wch: Math.min(60, longest + 2) };
  });
  return sheet;
}

function cellOf(value: string, heading: string): object {
  const day = dated.exec(value);
  if (day) return { t: 'n', v: serialOf(day), z: day[2] ? 'yyyy-mm-dd hh:mm' : 'yyyy-mm-dd' };
  if (!named.test(heading) && /^-?\d+(\.\d+)?(e-?\d+)?$/.test(value)) return { t: 'n', v: Number(value) };
  return { t: 's', v: value.length > longestCell ? `see the CSV: ${value.length} characters` : value };
}

/** Days since 1899-12-30, as ECMA-376 part 1, 18.17.4.1 counts dates after February 1900; 24:00 is the next midnight. */
function serialOf([, day, hours = '0', minutes = '0']: RegExpExecArray): number {
  const whole = (Date.parse(`${day}T00:00:00Z`) - Date.UTC(1899, 11, 30)) / 86_400_000;
  return whole + (Number(hours) * 60 + Number(minutes)) / 1440;
}
