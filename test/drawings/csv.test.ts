import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { changeJob } from '../../core/job/changes';
import { csvTables, type CsvTable } from '../../core/drawings/csv';
import type { WorkedOut } from '../../core/worked-out';
import { smallWorkedOut } from './small-job';
import { workedJobs } from './worked-jobs';

type Row = Record<string, string>;

function tableOf(worked: WorkedOut, name: CsvTable['name']): { text: string; rows: Row[] } {
  const text = csvTables(worked).find((table) => table.name === name)!.text;
  const parsed = Papa.parse<Row>(text, { header: true, skipEmptyLines: true });
  expect(parsed.errors).toEqual([]);
  return { text, rows: parsed.data };
}

describe.each(workedJobs)('CSV of the job %s', (_, worked) => {
  const panels = worked.walls.flatMap(({ zones }) => zones.flatMap(({ layout }) => layout?.panels ?? []));

  it('has a row for each panel in both lists, and reads back with the same marks', () => {
    const marks = panels.map(({ mark }) => mark);
    expect(tableOf(worked, 'cut-list').rows.map(({ mark }) => mark)).toEqual(marks);
    expect(tableOf(worked, 'panels').rows.map(({ mark }) => mark)).toEqual(marks);
  });

  it('has a row for each offcut, kept or not', () => {
    const offcuts = worked.cutting.sheets.flatMap((sheet) => sheet.offcuts);
    const { rows } = tableOf(worked, 'offcuts');
    expect(rows).toHaveLength(offcuts.length);
    expect(rows.filter(({ keep }) => keep === 'yes')).toHaveLength(offcuts.filter(({ keep }) => keep).length);
  });

  it('ends every line with CR LF (RFC 4180, 2.1)', () => {
    for (const { text } of csvTables(worked)) {
      expect(text.endsWith('\r\n')).toBe(true);
      expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    }
  });
});

describe('csvTables', () => {
  it('says where a notched panel is cut and why', () => {
    const row = tableOf(smallWorkedOut(), 'cut-list').rows.find(({ mark }) => mark === 'A-Z1-02')!;
    expect(row).toMatchObject({
      width_mm: '500',
      height_mm: '500',
      area_m2: '0.242044',
      cut_for: 'socket K4, notch at the foot',
      cutouts: 'socket K4: notch 156 × 51, 95 from the left, 0 from the foot',
      placed_on: 'N2',
    });
  });

  it('quotes commas, quotes and line breaks (RFC 4180, 2.6 and 2.7)', () => {
    const worked = smallWorkedOut();
    const name = 'Steel, "thin"\r\nhalf a millimetre';
    const job = changeJob(worked.job, { stock: worked.job.stock.map((stock) => ({ ...stock, name })) });
    expect(tableOf({ ...worked, job }, 'cut-list').rows[0]!.stock_name).toBe(name);
  });

  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =1'])(
    'sets text that a spreadsheet would run in words: %j',
    (name) => {
      const worked = smallWorkedOut();
      const job = changeJob(worked.job, { stock: worked.job.stock.map((stock) => ({ ...stock, name })) });
      expect(tableOf({ ...worked, job }, 'cut-list').rows[0]!.stock_name).toBe(`'${name}`);
    },
  );

  it('leaves a negative figure a figure', () => {
    const worked = smallWorkedOut();
    const walls = worked.walls.map((wall) => ({
      ...wall,
      zones: wall.zones.map((zone) => ({
        ...zone,
        layout: zone.layout && {
          ...zone.layout,
          panels: zone.layout.panels.map((panel) => ({
            ...panel,
            outline: {
              outer: panel.outline.outer.map(({ x, y }) => ({ x: x - 400000, y })),
              holes: panel.outline.holes.map((hole) => hole.map(({ x, y }) => ({ x: x - 400000, y }))),
            },
          })),
        },
      })),
    }));
    expect(tableOf({ ...worked, walls }, 'panels').rows[0]!.from_left_mm).toBe('-2600');
  });

  it('gives outlines that close, as OGC 06-103r4 writes polygons', () => {
    for (const { outline_wkt } of tableOf(smallWorkedOut(), 'panels').rows) {
      const rings = [...outline_wkt!.matchAll(/\(([^()]+)\)/g)].map((match) => match[1]!.split(', '));
      expect(outline_wkt).toMatch(/^POLYGON \(\(/);
      for (const ring of rings) expect(ring[0]).toBe(ring.at(-1));
    }
  });
});
