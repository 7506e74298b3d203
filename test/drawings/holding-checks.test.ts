import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { measureWith } from '../../core/drawings/fonts';
import { holdingChecks } from '../../core/drawings/holding-checks';
import { holdingTable } from '../../core/drawings/holding-table';
import { refuseWithoutCautions } from '../../core/drawings/refuse-without-cautions';
import { holdingCautions } from '../../core/holding/safety';
import { checkWall } from '../../core/holding/check-hung';
import { demoJob } from '../../core/job/demo';
import { lengthUnits } from '../../core/lengths';
import { workOutFully } from '../../core/run/pipeline';
import type { WorkedOut } from '../../core/worked-out';
import { board, jobWith } from '../holding/hung-job';
import { fontFiles } from './font-files';
import { textFaults, textsOf, wordsOf } from './page-checks';
import { smallWorkedOut } from './small-job';

const measure = measureWith(fontFiles);
const demo = workOutFully(demoJob(), { steps: 2 });

describe('holding checks of the demo', () => {
  const document = holdingChecks(demo, measure);
  const items = demo.walls.flatMap(({ survey }) => survey.wall.hung ?? []);

  it('begin a page for each item, with its state in words', () => {
    const states = document.pages.filter((page) => textsOf(page).some((text) => text.startsWith('Symbol')));
    expect(items.length).toBeGreaterThan(0);
    expect(document.pages.length).toBeGreaterThanOrEqual(items.length);
    expect(states.length).toBeGreaterThan(0);
  });

  it.each(lengthUnits)('have no text on another or over the frame, in %s', (units) => {
    const worked = { ...demo, job: { ...demo.job, units } };
    expect(textFaults(holdingChecks(worked, measure), measure, true)).toEqual([]);
  });

  it('carry every caution on every page that says whether something holds', () => {
    for (const page of document.pages) {
      const words = textsOf(page).join(' ').replace(/\s+/g, ' ');
      for (const { text } of holdingCautions) expect(words).toContain(text.replace(/(\d)\.(\d)/g, '$1,$2'));
    }
  });
});

describe('a page that says whether something holds', () => {
  const { pages } = holdingChecks(demo, measure);

  it('is refused without one of its cautions', () => {
    expect(refuseWithoutCautions(pages)).toBe(pages);
    const cut = pages.map((page, i) => ({
      ...page,
      items: page.items.filter((item) => i > 0 || item.kind !== 'text' || !item.text.includes('look again')),
    }));
    expect(() => refuseWithoutCautions(cut)).toThrow('Page 1');
    const bare = pages.map((page) => ({ ...page, items: [] }));
    expect(refuseWithoutCautions(bare)).toBe(bare);
  });
});

describe('the list of checks, read back by papaparse', () => {
  const read = (worked: WorkedOut) =>
    Papa.parse<Record<string, string>>(holdingTable(worked)!, { header: true, skipEmptyLines: true }).data;

  it('has a row an item, with what the wall shows of it, never rounded up', () => {
    const rows = read(demo);
    const verdicts = demo.walls.flatMap(({ hung }) => hung);
    expect(rows.map(({ item }) => item)).toEqual(verdicts.map(({ id }) => id));
    for (const [i, { state, factor, caution }] of rows.entries()) {
      const verdict = verdicts[i]!;
      expect(state).toBe(verdict.isScrewed ? 'screwed to a fixing point' : verdict.verdict);
      if (verdict.factor !== undefined) expect(Number(factor)).toBeLessThanOrEqual(verdict.factor);
      expect(caution).toContain('test on site');
    }
  });

  it('is in inches and pounds where lengths are in feet', () => {
    const [row] = read({ ...demo, job: { ...demo.job, units: 'ft-in' } });
    const [metric] = read(demo);
    expect(Number(row!.x_in)).toBeCloseTo(Number(metric!.x_mm) / 25.4, 3);
    expect(Number(row!.weight_lb)).toBeCloseTo(Number(metric!.weight_kg) / 0.45359237, 2);
  });

  it('is none where nothing hangs', () => {
    expect(holdingTable(smallWorkedOut())).toBeUndefined();
  });
});

describe('the figures of a check', () => {
  const job = jobWith([board]);
  const worked = workOutFully(job);
  const words = wordsOf(holdingChecks(worked, measure));

  it('are those of the calculation: the note’s example 1 at 3,0 times over, rounded down', () => {
    const [check] = checkWall(worked.job, worked.walls[0]!.survey.wall, worked.walls[0]!.zones);
    const factor = (Math.floor(check!.verdict.factor! * 100) / 100).toString().replace('.', ',');
    expect(words).toContain(`Holds: ${factor} times over, 3 asked for; slipping down governs`);
    expect(words).toContain('Q / V');
    expect(words).toContain('lower left corner 300 mm from the datum and 800 mm');
  });

  it('weigh in pounds where lengths are in feet', () => {
    const feet = wordsOf(holdingChecks({ ...worked, job: { ...worked.job, units: 'ft-in' } }, measure));
    const [kilograms, pounds] = [words, feet].map((text) =>
      Number(/whole item: ([\d,]+) (?:kg|lb)/.exec(text)![1]!.replace(',', '.')),
    );
    // 1 lb = 0.45359237 kg (yard and pound agreement, 1959); both rounded down to a hundredth.
    expect(Math.abs(pounds! - kilograms! / 0.45359237)).toBeLessThan(0.03);
  });

  it('are none where nothing hangs', () => {
    expect(holdingChecks(smallWorkedOut(), measure).pages).toEqual([]);
  });
});
