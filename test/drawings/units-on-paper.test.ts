import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { composeDocuments } from '../../core/drawings/compose';
import { csvTables } from '../../core/drawings/csv';
import { measureWith } from '../../core/drawings/fonts';
import { paperFigures } from '../../core/drawings/paper-figures';
import { placedPanels } from '../../core/drawings/placed-panels';
import { boxOf, polygonArea } from '../../core/geometry/polygon';
import { lengthUnits, type LengthUnits } from '../../core/lengths';
import { workOutFully } from '../../core/run/pipeline';
import { fontFiles } from './font-files';
import { textFaults, textsOf, wordsOf, unframed } from './page-checks';
import { workedJobs } from './worked-jobs';

const measure = measureWith(fontFiles);

/** mm in a figure as a tape of the unit shows it. Written anew: nothing here comes from `core/lengths.ts`. */
function read(figure: string, units: LengthUnits): number {
  const bare = figure.replace(/^[~(]+|\)$/g, '').replace('−', '-');
  if (bare.endsWith(' mm') || bare.endsWith('\u00A0mm')) return Number(bare.slice(0, -3).replace(',', '.'));
  if (units !== 'ft-in') return Number(bare.replace(',', '.')) * { mm: 1, cm: 10, m: 1000 }[units];
  const [, feet = '0', inches = '0', over = '0', under = '1'] =
    /^-?(?:(\d+)'-)?(?:(\d+)(?![/\d]))?[\u00A0 ]?(?:(\d+)\/(\d+))?"$/.exec(bare) ?? [NaN, NaN];
  const size = (Number(feet) * 12 + Number(inches) + Number(over) / Number(under)) * 25.4;
  return bare.startsWith('-') ? -size : size;
}

const resolution: Record<LengthUnits, number> = { mm: 0.05, cm: 0.05, m: 0.05, 'ft-in': 25.4 / 32 };

const cases = lengthUnits
  .filter((units) => units !== 'mm')
  .flatMap((units) =>
    workedJobs.map(([name, { job, ...worked }]) => {
      const inUnits = { ...worked, job: { ...job, units } };
      return [`${name} in ${units}`, units, inUnits, composeDocuments(inUnits, measure)] as const;
    }),
  );

describe.each(cases)('the documents of the job %s', (_, units, worked, documents) => {
  it('lay no text on another and none out of the frame', () => {
    for (const document of documents) {
      const framed = !unframed.includes(document.name);
      expect([document.name, textFaults(document, measure, framed)]).toEqual([document.name, []]);
    }
  });

  it('say the unit in the title block', () => {
    const name = { mm: 'millimetre', cm: 'centimetre', m: 'metre', 'ft-in': 'foot and inch' }[units];
    for (const { pages } of documents.filter(({ name: id }) => /^(setting-out|cut-)/.test(id))) {
      for (const page of pages) {
        const texts = textsOf(page);
        expect(texts[texts.indexOf('Unit of lengths') + 1]).toBe(name);
      }
    }
  });

  it('give the size of the wall and of every panel as the unit can', () => {
    for (const { survey } of worked.walls) {
      const { left, right } = boxOf(survey.outline.ring);
      const document = documents.find(({ name }) => name === `setting-out-${survey.wall.id}`)!;
      const overall = document.pages.flatMap(textsOf).filter((text) => /^\(.*\)$/.test(text));
      const near = overall.map((text) => Math.abs(read(text, units) - (right - left) / 100));
      expect(Math.min(...near)).toBeLessThanOrEqual(resolution[units] + 1e-9);
    }
    const texts = documents.find(({ name }) => name === 'cut-list')!.pages.flatMap(textsOf);
    for (const { panel } of placedPanels(worked)) {
      const { left, bottom, right, top } = boxOf(panel.outline.outer);
      const at = texts.indexOf(panel.mark);
      const sizes = texts[at + 1]!.split(' × ').map((side) => read(side, units));
      expect(Math.abs(sizes[0]! - (right - left) / 100)).toBeLessThanOrEqual(resolution[units] + 1e-9);
      expect(Math.abs(sizes[1]! - (top - bottom) / 100)).toBeLessThanOrEqual(resolution[units] + 1e-9);
      // A size in feet and inches that is not the panel's own says so, and gives the exact one.
      const isExact = [right - left, top - bottom].every(
        (side, i) => Math.abs(sizes[i]! - side / 100) <= 0.01,
      );
      if (units !== 'ft-in') continue;
      expect(texts[at + 1]!.includes('~')).toBe(!isExact);
      if (isExact) continue;
      const exact = texts[at + 2]!.replace(/\u00A0mm$/, '').split(' × ');
      expect(exact.map((side) => Number(side.replace(',', '.')))).toEqual([
        (right - left) / 100,
        (top - bottom) / 100,
      ]);
    }
  });

  it('tell in lists for other programs every hundredth of a millimetre', () => {
    const { text } = csvTables(worked).find(({ name }) => name === 'panels')!;
    const { data } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
    const [unit, perUnit] = { mm: ['mm', 1], cm: ['cm', 10], m: ['m', 1000], 'ft-in': ['in', 25.4] }[
      units
    ] as [string, number];
    const panels = worked.walls.flatMap(({ zones }) => zones.flatMap(({ layout }) => layout?.panels ?? []));
    expect(data).toHaveLength(panels.length);
    data.forEach((row, i) => {
      const { outline } = panels[i]!;
      const { left, right } = boxOf(outline.outer);
      expect(Math.round(Number(row[`width_${unit}`]) * perUnit * 100)).toBe(right - left);
      const [x] = /\(\(([-\d.]+) /.exec(row.outline_wkt!)!.slice(1);
      expect(Math.round(Number(x) * perUnit * 100)).toBe(outline.outer[0]!.x);
      // 1 ft² is 0.09290304 m² (international foot, 1959).
      const area = units === 'ft-in' ? Number(row.area_ft2) * 0.09290304 : Number(row.area_m2);
      expect(area).toBeCloseTo(polygonArea(outline) / 1e10, 6);
    });
  });
});

describe('figures on paper', () => {
  it('have the comma of ISO 129-1 and hold together in a line', () => {
    expect(paperFigures('m').length(122650)).toBe('1,2265');
    expect(paperFigures('cm').length(122650)).toBe('122,65');
    expect(paperFigures('ft-in').length(119697.5)).toBe(`3'-11\u00A01/8"`);
    expect(paperFigures('ft-in').length(200)).toBe('2 mm');
    expect(paperFigures('ft-in').cut(119697.5)).toBe(`3'-11\u00A01/8"`);
    expect(paperFigures('ft-in').cut(120000)).toBe(`~3'-11\u00A01/4"`);
  });

  it('leave millimetres as they were', () => {
    const [, worked] = workedJobs[1]!;
    const plain = composeDocuments(worked, measure);
    const said = composeDocuments({ ...worked, job: { ...worked.job, units: 'mm' } }, measure);
    expect(said).toEqual(plain);
    expect(plain.map(wordsOf).join()).not.toContain('~');
  });

  it('are the same length however they are printed', () => {
    // The demo is worked out in one unit and drawn in another: nothing that is planned may differ.
    const [, worked] = workedJobs[1]!;
    const again = workOutFully({ ...worked.job, units: 'ft-in' }, { steps: 2 });
    expect(again.cutting).toEqual(worked.cutting);
  });
});
