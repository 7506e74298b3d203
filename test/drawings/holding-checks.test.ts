import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { measureWith } from '../../core/drawings/fonts';
import { holdingCheckOf, holdingChecks } from '../../core/drawings/holding-checks';
import { paperFigures } from '../../core/drawings/paper-figures';
import { refuseWithoutCautions } from '../../core/drawings/refuse-without-cautions';
import { toSvg } from '../../core/drawings/svg';
import type { LodeplanDocument, Page } from '../../core/drawings/page';
import { adviseHung } from '../../core/holding/advise';
import { calculationFigure, timesFigure, usedFigure } from '../../core/holding/calculation-words';
import { checkWall, type HungCheck } from '../../core/holding/check-hung';
import { wallOfItems } from '../../core/holding/judge-wall';
import { holdingCautions } from '../../core/holding/safety';
import { demoJob } from '../../core/job/demo';
import { lengthUnits } from '../../core/lengths';
import { workOutFully } from '../../core/run/pipeline';
import { toHundredth } from '../../core/units';
import type { WorkedOut, WorkedWall } from '../../core/worked-out';
import { board, jobWith } from '../holding/hung-job';
import { fontFiles } from './font-files';
import { textFaults, textsOf, wordsOf } from './page-checks';
import { smallWorkedOut } from './small-job';

const measure = measureWith(fontFiles);
const demo = workOutFully(demoJob(), { steps: 2 });
const document = holdingChecks(demo, measure);

const comma = (text: string) => text.replace(/(?<=\d)\.(?=\d)/g, ',');
const unbroken = (page: Page) => textsOf(page).join(' ').replace(/\s+/g, ' ');
const checksOf = (worked: WorkedOut) =>
  worked.walls.flatMap((wall) =>
    checkWall(worked.job, wall.survey.wall, wall.zones).map((check) => ({
      wall,
      check,
      mark: `${wall.survey.wall.id}-${check.item.id}`,
    })),
  );
/** Those before the calculation, and the calculation. */
const appendixOf = ({ pages }: LodeplanDocument) =>
  pages.slice(pages.findIndex((page) => unbroken(page).includes('The calculation in full')));

describe('holding checks of the demo', () => {
  const checks = checksOf(demo);

  it('are about a page an item, a summary before them and the calculation after them', () => {
    expect(checks).toHaveLength(12);
    expect(document.pages.length).toBeLessThanOrEqual(15);
    expect(unbroken(document.pages[0]!)).toContain('Summary of holding checks');
    expect(appendixOf(document).length).toBeLessThanOrEqual(3);
  });

  it.each(lengthUnits)('have no text on another or over the frame, in %s', (units) => {
    const worked = { ...demo, job: { ...demo.job, units } };
    expect(textFaults(holdingChecks(worked, measure), measure, true)).toEqual([]);
  });

  it.each(lengthUnits)('break no figure of the place of a magnet, in %s', (units) => {
    const worked = { ...demo, job: { ...demo.job, units } };
    const texts = new Set(holdingChecks(worked, measure).pages.flatMap(textsOf));
    const { length } = paperFigures(units);
    for (const { check } of checks)
      for (const place of check.item.magnets?.places.flat() ?? [])
        expect([...texts]).toContain(length(toHundredth(place)));
  });

  it('are lettered under 2.5 mm in the tables of the calculation only', () => {
    const appendix = appendixOf(document);
    for (const page of document.pages) {
      const small = page.items.filter((item) => item.kind === 'text' && item.height < 2.5);
      expect(small.length > 0 && !appendix.includes(page)).toBe(false);
    }
  });

  it('carry every caution on every page', () => {
    for (const page of document.pages)
      for (const { text } of holdingCautions) expect(unbroken(page)).toContain(comma(text));
  });

  it('name each item in the summary with its state, its sheet and its calculation', () => {
    const summary = unbroken(document.pages[0]!);
    for (const { mark, check } of checks) {
      const row = summary.slice(summary.indexOf(`${mark} `));
      const own = /(\d+) (?:Zone|Do|Test)/.exec(row)![1]!;
      expect(row).toMatch(new RegExp(`^${mark} [^–]+? ${check.verdict.verdict} `));
      expect(unbroken(document.pages[Number(own) - 1]!)).toContain(mark);
      if (check.result?.lines.length)
        expect(row).toContain(`Calculation: sheet ${document.pages.indexOf(appendixOf(document)[0]!) + 1}.`);
    }
  });

  it('never say of the use that is forbidden, or of what is not judged, how many times it holds in large letters', () => {
    for (const { wall, check } of checks) {
      const { verdict, factor = 0, asked = Infinity } = check.verdict;
      const alone = holdingCheckOf(demo, wall.survey.wall.id, check.item.id, measure)!;
      const large = alone.pages[0]!.items.flatMap((item) =>
        item.kind === 'text' && item.height === 3.5 ? [item.text] : [],
      );
      const isSaid = large.some((text) => text.includes('times over'));
      expect(isSaid).toBe(
        check.result !== undefined &&
          check.result.modes.length > 0 &&
          verdict !== 'cannot be judged' &&
          !(verdict === 'does not hold' && factor >= asked),
      );
    }
  });
});

/** All that the sheets of one item have to say, as figures and sentences. */
function saidOf(wall: WorkedWall, check: HungCheck): string[] {
  const { item, verdict, result, assumptions } = check;
  const figures = paperFigures('mm');
  const advice = adviseHung(wallOfItems(demo.job, wall.survey.wall, wall.zones), item.id);
  return [
    ...[item.x, item.y, item.width, item.height].map((length) => figures.words(length)),
    ...verdict.zones,
    ...verdict.panels,
    ...verdict.reasons,
    ...assumptions,
    ...advice.flatMap(({ words, also, factor }) => [
      words,
      ...(also ? [also] : []),
      ...(factor === undefined ? [] : [`${timesFigure(factor)} times over`]),
    ]),
    ...check.bonds.map(({ panel }) => panel),
    ...(result?.modes ?? []).flatMap((mode) => [
      timesFigure(mode.factor),
      timesFigure(mode.factorInWorstCase),
      usedFigure(mode.utilisation),
    ]),
    ...(result?.magnets ?? []).flatMap(({ pull, derating: { share } }) =>
      pull.by === 'nothing'
        ? []
        : [pull.nominal, pull.least].map((force) => calculationFigure(force * share)),
    ),
  ].map(comma);
}

describe('every figure of a check', () => {
  const checks = checksOf(demo);

  it.each(checks.map(({ mark }) => mark))('of %s stands on its sheet', (mark) => {
    const { wall, check } = checks.find((one) => one.mark === mark)!;
    const page = document.pages.slice(1).find((one) => unbroken(one).includes(mark))!;
    for (const said of saidOf(wall, check)) expect(unbroken(page)).toContain(said);
  });

  it.each(checks.map(({ mark }) => mark))(
    'of %s stands in the calculation, every line with unit and source',
    (mark) => {
      const { wall, check } = checks.find((one) => one.mark === mark)!;
      const { lines = [] } = check.result ?? {};
      const alone = holdingCheckOf(demo, wall.survey.wall.id, check.item.id, measure)!;
      for (const { pages } of [document, alone]) {
        const appendix = appendixOf({ ...alone, pages })
          .map(unbroken)
          .join(' ');
        const listed = appendix.slice(appendix.lastIndexOf(' Sources '));
        const notes = listed.slice(0, listed.indexOf(' Cautions:')).matchAll(/\[(\d+)\] (.+?)(?= \[\d|$)/g);
        const sources = new Map([...notes].map(([, number, words]) => [words!, number!]));
        const bonds = check.bonds.flatMap(({ result }) => result.lines);
        for (const { symbol, words, formula, value, unit, source } of [...lines, ...bonds]) {
          const said = comma([symbol, words, ...(formula === undefined ? [] : ['=', formula])].join(' '));
          const at = [...places(appendix, said)].map((from) => appendix.slice(from + said.length));
          const number = sources.get(comma(source));
          // Unit, the values side by side, the number of the source.
          const row = new RegExp(`^ ?${escaped(unit)}( [\\d,−∞–]+)+ \\[${number}\\]`);
          const values = at.flatMap((rest) => row.exec(rest)?.[0].split(' ') ?? []);
          expect(values, said).toContain(comma(calculationFigure(value)));
        }
      }
    },
  );
});

function* places(text: string, part: string): Generator<number> {
  for (let at = text.indexOf(part); at >= 0; at = text.indexOf(part, at + 1)) yield at;
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
}

describe('a page that says whether something holds', () => {
  const { pages } = document;

  it('is refused without one of its cautions', () => {
    expect(refuseWithoutCautions(pages, 'all')).toBe(pages);
    for (const [i] of pages.entries()) {
      const cut = pages.map((page, j) => ({
        ...page,
        items: page.items.filter(
          (item) => i !== j || item.kind !== 'text' || !item.text.includes('Soft paint'),
        ),
      }));
      expect(() => refuseWithoutCautions(cut, 'all')).toThrow(`Page ${i + 1} `);
    }
    const bare = pages.map((page) => ({ ...page, items: [] }));
    expect(refuseWithoutCautions(bare)).toBe(bare);
    expect(() => refuseWithoutCautions(bare, 'all')).toThrow('Page 1 ');
  });
});

describe('the check of one item alone', () => {
  it('has its sheet, its calculation with sources, and nothing of other items', () => {
    const alone = holdingCheckOf(demo, 'A', 'H6', measure)!;
    expect(alone.name).toBe('holding-check-A-H6');
    expect(alone.pages.length).toBeLessThanOrEqual(3);
    expect(textFaults(alone, measure, true)).toEqual([]);
    expect(unbroken(alone.pages[0]!)).toContain('A-H6 Shelf (Ink tins)');
    expect(wordsOf(alone)).not.toContain('A-H5');
    expect(wordsOf(alone)).not.toContain('Summary');
  });

  it('is none of an item that is not there', () => {
    expect(holdingCheckOf(demo, 'A', 'H99', measure)).toBeUndefined();
    expect(holdingCheckOf(demo, 'Z', 'H1', measure)).toBeUndefined();
  });
});

describe('an item with more than a page of magnets', () => {
  const places = Array.from(
    { length: 60 },
    (_, i) => [20 + (i % 6) * 60, 20 + Math.floor(i / 6) * 60] as [number, number],
  );
  const crowded = { ...board, width: 400, height: 620, magnets: { ...board.magnets!, places } };
  const worked = workOutFully(jobWith([crowded]));
  const long = holdingChecks(worked, measure);

  it('runs over pages with the heading of its table repeated, nothing on anything else', () => {
    expect(textFaults(long, measure, true)).toEqual([]);
    const own = long.pages.slice(1, long.pages.indexOf(appendixOf(long)[0]!));
    expect(own.length).toBeGreaterThan(1);
    const rows = own.flatMap((page) => textsOf(page).filter((text) => /^\d+$/.test(text)));
    for (let i = 1; i <= 60; i++) expect(rows).toContain(String(i));
    for (const page of own)
      if (textsOf(page).includes('100 %') || textsOf(page).includes('50 %'))
        expect(textsOf(page)).toContain('pull, N');
  });
});

describe('items alike', () => {
  const twin = { ...board, id: 'H2', x: board.x + 1000 };
  const other = { ...board, id: 'H3', x: board.x + 2000, weight: board.weight! + 0.1 };

  it('share a sheet that says where each hangs; one that differs has its own', () => {
    const worked = workOutFully(jobWith([board, twin, other]));
    const pages = holdingChecks(worked, measure).pages.map(unbroken);
    const of = (mark: string) => pages.findIndex((page, i) => i > 0 && page.includes(`${mark}`));
    const [wall] = worked.walls;
    const mark = (id: string) => `${wall!.survey.wall.id}-${id}`;
    expect(of(mark('H2'))).toBe(of(mark(board.id)));
    expect(of(mark('H3'))).not.toBe(of(mark(board.id)));
    expect(pages[of(mark('H2'))]).toContain(`lower left corner ${twin.x} mm`);
  });
});

describe('the figures of a check', () => {
  const job = jobWith([board]);
  const worked = workOutFully(job);
  const words = wordsOf(holdingChecks(worked, measure)).replace(/\s+/g, ' ');

  it('are those of the calculation: the note’s example 1 at 3,0 times over, rounded down', () => {
    const [check] = checkWall(worked.job, worked.walls[0]!.survey.wall, worked.walls[0]!.zones);
    const factor = (Math.floor(check!.verdict.factor! * 100) / 100).toString().replace('.', ',');
    expect(words).toMatch(/Holds [\d,]+ kg largest safe weight of/);
    expect(words).toContain(`${factor} times over, 3 asked for; slipping down governs.`);
    expect(words).toContain('Q / V');
    expect(words).toContain('lower left corner 300 mm from the datum and 800 mm');
  });

  it('weigh in pounds where lengths are in feet', () => {
    const feet = wordsOf(holdingChecks({ ...worked, job: { ...worked.job, units: 'ft-in' } }, measure));
    const [kilograms, pounds] = [words, feet].map((text) =>
      Number(/([\d,]+) (?:kg|lb)/.exec(text)![1]!.replace(',', '.')),
    );
    // 1 lb = 0.45359237 kg (yard and pound agreement, 1959); both rounded down to a hundredth.
    expect(Math.abs(pounds! - kilograms! / 0.45359237)).toBeLessThan(0.03);
  });

  it('are none where nothing hangs', () => {
    expect(holdingChecks(smallWorkedOut(), measure).pages).toEqual([]);
  });
});

/* Drawings under review, as of the setting-out sheets: see `svg.test.ts`. */
describe('holding checks of the demo look as reviewed', () => {
  const reviewed = [
    ['holding-summary', document.pages[0]!],
    ['holding-item-A-H6', document.pages.slice(1).find((page) => unbroken(page).includes('A-H6 '))!],
    ['holding-calculation-1', appendixOf(document)[0]!],
  ] as const;

  it.each(reviewed)('%s', (name, page) => {
    const expected = new URL(`../pages/${name}.svg`, import.meta.url);
    const changed = new URL(`../pages/${name}.changed.svg`, import.meta.url);
    const svg = toSvg(page);
    rmSync(changed, { force: true });
    const same = existsSync(expected) && readFileSync(expected, 'utf8') === svg;
    if (!same) writeFileSync(changed, svg);
    expect(same, `${name} has changed: compare it with test/pages/${name}.changed.svg`).toBe(true);
  });
});
