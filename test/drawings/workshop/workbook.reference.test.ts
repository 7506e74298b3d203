import { strFromU8, unzipSync } from 'fflate';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { csvTables } from '../../../core/drawings/csv';
import { pricedTables } from '../../../core/drawings/priced-tables';
import { writeWorkbook } from '../../../core/drawings/workshop/workbook';
import { changeJob } from '../../../core/job/changes';
import type { WorkedOut } from '../../../core/worked-out';
import { smallWorkedOut } from '../small-job';
import { workedJobs } from '../worked-jobs';
import { readXml } from './read-drawing';

/* ECMA-376 part 1 (SpreadsheetML): unzipped by fflate and read as XML, by neither of which the file was written. */
function readBook(worked: WorkedOut) {
  const files = unzipSync(writeWorkbook(worked));
  const xml = (name: string) => readXml(strFromU8(files[name]!));
  const of = (node: ReturnType<typeof xml>, tag: string) => Array.from(node.getElementsByTagName(tag));
  const strings = of(xml('xl/sharedStrings.xml'), 'si').map((si) => si.textContent ?? '');
  return of(xml('xl/workbook.xml'), 'sheet').map((sheet, i) => {
    const root = xml(`xl/worksheets/sheet${i + 1}.xml`);
    const cells = of(root, 'c').map((cell) => {
      const raw = of(cell, 'v')[0]?.textContent ?? '';
      const isText = cell.getAttribute('t') === 's';
      return { at: cell.getAttribute('r')!, isText, value: isText ? strings[Number(raw)]! : Number(raw) };
    });
    const formulas = of(root, 'f').length;
    return { name: sheet.getAttribute('name'), cells, formulas, columns: of(root, 'col') };
  });
}

describe.each(workedJobs)('workbook of the job %s', (_, worked) => {
  const sheets = readBook(worked);

  it('has a sheet a list, with as many rows, and no formula', () => {
    const lists = [...csvTables(worked), ...pricedTables(worked).filter(({ name }) => name.endsWith('.csv'))];
    expect(sheets).toHaveLength(lists.length);
    lists.forEach(({ text }, i) => {
      const rows = Papa.parse(text, { skipEmptyLines: true }).data.length;
      expect(new Set(sheets[i]!.cells.map(({ at }) => at.replace(/\D/g, ''))).size).toBe(rows);
      expect(sheets[i]!.formulas).toBe(0);
      expect(sheets[i]!.columns.length).toBeGreaterThan(0);
    });
  });

  it('has widths as numbers and marks as text', () => {
    const { cells } = sheets.find(({ name }) => name === 'Cut list')!;
    const column = (heading: string) => {
      const head = cells.find(({ value }) => value === heading)!.at.replace(/\d/g, '');
      return cells.filter(({ at }) => at.replace(/\d/g, '') === head && at !== `${head}1`);
    };
    expect(column('width_mm').length).toBeGreaterThan(0);
    expect(column('width_mm').every(({ isText }) => !isText)).toBe(true);
    expect(column('mark').every(({ isText }) => isText)).toBe(true);
  });

  it('is the same for the same job', () => {
    expect(writeWorkbook(worked)).toEqual(writeWorkbook(worked));
  });
});

describe('cells of the workbook', () => {
  it('count days as ECMA-376 does: 2 March 2026 is 46083', () => {
    const { cells } = readBook(workedJobs[0]![1]).find(({ name }) => name === 'Programme')!;
    const days = cells.filter(({ isText, value }) => !isText && Number(value) > 40_000);
    expect(Math.min(...days.map(({ value }) => Math.floor(Number(value))))).toBeGreaterThan(46_000);
  });

  it.each(['=1+1', '@SUM(A1)', '+1', '007'])('hold the name %s as text', (name) => {
    const worked = smallWorkedOut();
    const job = changeJob(worked.job, { stock: worked.job.stock.map((stock) => ({ ...stock, name })) });
    const { cells, formulas } = readBook({ ...worked, job })[0]!;
    const own = cells.filter(({ value }) => String(value).endsWith(name));
    expect(own.length).toBeGreaterThan(0);
    expect(own.every(({ isText }) => isText)).toBe(true);
    expect(formulas).toBe(0);
  });
});
