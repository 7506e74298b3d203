import Papa from 'papaparse';
import { beforeAll, describe, expect, it } from 'vitest';
import { measureWith } from '../../core/drawings/fonts';
import { materialsList } from '../../core/drawings/materials-list';
import { materialsTable, needsTable } from '../../core/drawings/materials-tables';
import type { LodeplanDocument } from '../../core/drawings/page';
import { emptyJob } from '../../core/job/defaults';
import { takeOff } from '../../core/quantities/take-off';
import { workOutFully } from '../../core/run/pipeline';
import { box, jobOf, wallOf, workedTakeOff } from '../quantities/worked-jobs';
import { fontFiles } from './font-files';
import { textFaults, textsOf, wordsOf } from './page-checks';
import { workedJobs } from './worked-jobs';

const measure = measureWith(fontFiles);

/** Every kind of line at once: film, tape, two components, prices, a sundry of the job, a long name. */
const fullJob = jobOf({
  units: 'ft-in',
  stock: [{ id: 'S1', width: 500, height: 500, thickness: 0.5, price: 6.4, spares: 2 }],
  products: [
    {
      id: 'film',
      name: 'Writable film that is sold under an uncommonly long name by the roll',
      layer: 'writable-film',
      unit: 'm2',
      rollWidth: 1220,
      packs: [{ size: 12.2, price: 199.5 }],
    },
  ],
  buildUps: [{ id: 'own', kind: 'writable-film', layers: [{ kind: 'writable-film', product: 'film' }] }],
  quantities: { sundries: [{ id: 'kit', name: '=Kit', per: 'job', amount: 2 }] },
  walls: [
    wallOf({
      zones: [
        {
          id: 'Z1',
          name: 'Proofs',
          buildUp: 'steel-panel-writable',
          shape: box(200, 800, 2000, 1500),
          layout: { stock: 'S1', start: 'lower-left' },
        },
        { id: 'Z2', buildUp: 'writable-film', layers: 'own', shape: box(2500, 200, 3000, 2500) },
      ],
    }),
  ],
});
const full = workedTakeOff(fullJob);

describe.each([
  ...workedJobs.map(
    ([name, worked]) => [name, worked, takeOff(worked.job, worked.walls, worked.cutting)] as const,
  ),
  ['in feet and inches', full.worked, full.off] as const,
])('the materials list of the job %s', (_, worked, off) => {
  let list: LodeplanDocument;
  beforeAll(() => {
    list = materialsList(worked, off, measure);
  });

  it('lays no text on another, none out of the frame, none under 2.5 mm', () => {
    expect(list.pages.length).toBeGreaterThan(1);
    expect(textFaults(list, measure, true)).toEqual([]);
  });

  it('names every material, and every zone that takes some', () => {
    const words = wordsOf(list).replaceAll('\n', ' ');
    for (const { name } of off.lines) expect(words).toContain(name);
    for (const { survey, zones } of worked.walls) {
      for (const { area } of zones) expect(words).toContain(`Zone ${area.zone.id}`);
      expect(words).toContain(`wall ${survey.wall.id}`);
    }
  });

  it('says on each page which one of how many it is', () => {
    list.pages.forEach((page, i) => expect(textsOf(page)).toContain(`${i + 1} of ${list.pages.length}`));
  });
});

describe('what a materials list says', () => {
  const texts = materialsList(full.worked, full.off, measure).pages.flatMap(textsOf);
  const after = (text: string, places: number) => texts[texts.indexOf(text) + places];

  it('of steel: the plan, with spares, what they cost', () => {
    // 4 × 3 panels whole; 14 sheets at 6.40.
    expect([1, 2, 3, 4, 5].map((place) => after('Stock sheet S1', place))).toEqual([
      '12',
      '14',
      '14 sheets',
      '2',
      '89,60',
    ]);
  });

  it('of film: strips and seams', () => {
    expect(texts.some((text) => /^Cut /.test(text))).toBe(true);
    expect(texts.some((text) => text.includes('upright strips') || text.includes('level strips'))).toBe(true);
  });

  it('of two-component products: how they are mixed and when the tape comes off', () => {
    expect(texts).toContain('Component A + B');
    expect(texts.some((text) => text.startsWith('by 60'))).toBe(true);
  });

  it('is nothing for a job that takes nothing', () => {
    const { worked, off } = workedTakeOff(emptyJob('Empty'));
    expect(materialsList(worked, off, measure).pages).toEqual([]);
    expect(workOutFully(emptyJob('Empty')).walls).toEqual([]);
  });
});

describe('tables of materials for other programs', () => {
  const rows = (text: string) =>
    Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;

  it('have a row for each line, with costs in the currency', () => {
    const own = rows(materialsTable(full.worked, full.off).text);
    expect(own).toHaveLength(full.off.lines.length);
    expect(own[0]).toMatchObject({
      item: 'stock S1',
      net: '12',
      with_loss: '14',
      order: '14 x 1',
      cost: '89.6',
    });
    expect(own.find(({ item }) => item === 'product film')).toMatchObject({
      order: '1 x 12.2',
      cost: '199.5',
    });
  });

  it('have a row for each need', () => {
    const own = rows(needsTable(full.worked, full.off).text);
    expect(own).toHaveLength(full.off.needs.length);
    expect(
      own.filter((row) => row.kind === 'writable' && row.for === 'face').map(({ coat }) => coat),
    ).toEqual(['1', '2', '3']);
  });

  it('set a name in words that a spreadsheet would run', () => {
    const own = rows(materialsTable(full.worked, full.off).text);
    expect(own.find(({ item }) => item === 'sundry kit')!.name).toBe("'=Kit");
  });
});
