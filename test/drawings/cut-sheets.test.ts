import { describe, expect, it } from 'vitest';
import { cutPatterns } from '../../core/drawings/cut-patterns';
import { cutoutsText } from '../../core/drawings/cut-sheet-lists';
import { cutSheets } from '../../core/drawings/cut-sheets';
import { measureWith } from '../../core/drawings/fonts';
import { boxOf } from '../../core/geometry/polygon';
import type { CutoutKind } from '../../core/drawings/panel-measures';
import { jobOf, workedOutOf, zone } from './crowded-job';
import { fontFiles } from './font-files';
import { oddWalls } from './odd-walls';
import { textFaults, textsOf } from './page-checks';
import { workedJobs } from './worked-jobs';

const measure = measureWith(fontFiles);

describe('what is cut out of a panel, in words', () => {
  it.each<[string, CutoutKind[]]>([
    ['notch', ['notch']],
    ['slants', ['slant', 'slant']],
    ['notch and hole', ['hole', 'notch']],
    ['notches, hole and slant', ['notch', 'slant', 'hole', 'notch']],
  ])('%s', (text, kinds) => {
    expect(cutoutsText(kinds.map((kind) => ({ kind })))).toBe(text);
  });
});

const [, demo] = workedJobs[1]!;

describe('cut sheets of the demo', () => {
  const document = cutSheets(demo, measure);
  const texts = document.pages.flatMap(textsOf);

  it('say where the cut between two panels of a slanted pair runs', () => {
    expect(texts.join(' ')).toContain('slanted: 500 from the left, 0 up; to 166,7 from the left, 500 up');
    expect(texts.join(' ')).not.toContain('cutout');
  });

  it('take no more than six pages', () => {
    expect(document.pages.length).toBeLessThanOrEqual(6);
  });

  it('leave no drawing to a pattern that its panel sheet says all of, and draw every pattern with an offcut to keep', () => {
    for (const { number, drawn, sheets } of cutPatterns(demo).patterns) {
      const [placement] = drawn.placements;
      const { left, bottom, right, top } = boxOf(placement!.outline.outer);
      const isWhole =
        drawn.placements.length === 1 && (right - left) * (top - bottom) === drawn.width * drawn.height;
      const isKept = drawn.offcuts.some(({ keep }) => keep);
      expect(texts.includes(`Pattern ${number}`)).toBe(!isWhole || isKept);
      const named = texts.filter((text) => text.startsWith(`Pattern ${number}: `));
      expect(named).toEqual(
        isWhole && !isKept ? [`Pattern ${number}: 1 stock sheet ${sheets[0]!.id}, whole but for this`] : [],
      );
    }
  });
});

describe('a panel whose corner a slope clips, beside another on its stock sheet', () => {
  const outline = [
    [0, 0],
    [2000, 0],
    [2000, 800],
    [1800, 1000],
    [0, 1000],
  ];
  const zones = [zone('Z1', 1300, 0, 700, 1000, { stock: 'S1', start: 'lower-left' })];
  const worked = workedOutOf(jobOf([{ id: 'A', outline, zones }]));
  const texts = cutSheets(worked, measure).pages.flatMap(textsOf);

  it('has the cut at the slope called a slant', () => {
    expect(texts.filter((text) => /^cut the slant of [a-z], see its panel sheet$/.test(text))).not.toEqual(
      [],
    );
    expect(texts.join(' ')).not.toContain('cutout');
  });
});

describe('cut sheets of odd walls', () => {
  it('lay no text on another, none out of the frame', () => {
    expect(textFaults(cutSheets(oddWalls, measure), measure, true)).toEqual([]);
  });
});

describe('a pattern of one panel that many stock sheets are cut by', () => {
  const walls = ['A', 'B', 'C', 'D', 'E', 'F'].map((id) => ({
    id,
    outline: [
      [0, 0],
      [2000, 0],
      [2000, 2000],
      [0, 2000],
    ],
    fittings: [{ id: 'K1', kind: 'socket', x: 700, y: 700, width: 146, height: 86, clearance: 5 }],
    zones: [zone('Z1', 500, 500, 500, 500, { stock: 'S1', start: 'lower-left' })],
  }));
  const worked = workedOutOf(jobOf(walls));
  const texts = cutSheets(worked, measure).pages.flatMap(textsOf);

  it('stands on its panel sheet with count, stock sheets and all marks', () => {
    expect(cutPatterns(worked).patterns).toHaveLength(1);
    expect(texts).toContain('6 panels alike');
    expect(texts.join(' ')).toContain('Pattern 1: 6 stock sheets N1 to N6, whole but for this');
    expect(texts).not.toContain('Pattern 1');
    for (const { id } of walls) expect(texts.join(' ')).toContain(`${id}-Z1-01`);
  });
});

describe('stock sheets that hold the same panels in another order', () => {
  const [, byHand] = workedJobs[0]!;
  const { sheets } = byHand.cutting;
  const first = sheets.find(({ placements, cuts }) => placements.length > 1 && cuts.length > 0)!;
  const second = {
    ...first,
    id: 'N99',
    placements: first.placements.map((one) => ({ ...one, mark: `other ${one.mark}` })).reverse(),
  };
  const { patterns } = cutPatterns({ ...byHand, cutting: { ...byHand.cutting, sheets: [first, second] } });

  it('are one pattern, each mark at its own place', () => {
    expect(patterns).toHaveLength(1);
    for (const { marks } of patterns[0]!.places) expect(marks[1]).toBe(`other ${marks[0]!}`);
  });
});

describe('closing panels, of a zone whose first course is cut', () => {
  const outline = [
    [0, 0],
    [3200, 0],
    [3200, 2400],
    [0, 2400],
  ];
  const laidFrom = (foot: number) =>
    workedOutOf(
      jobOf([
        {
          id: 'A',
          outline,
          zones: [zone('Z1', 100, foot, 3000, 2000 - foot, { stock: 'S1', start: { x: 0, y: 300 } })],
        },
      ]),
    );
  const wordsOf = (worked: ReturnType<typeof laidFrom>) =>
    cutSheets(worked, measure).pages.flatMap(textsOf).join(' ');

  it('bear their sign wherever they are cut, and no others do', () => {
    const worked = laidFrom(0);
    const { panels } = worked.walls[0]!.zones[0]!.layout!;
    const words = wordsOf(worked);
    expect(panels.filter(({ closing }) => closing).length).toBeGreaterThan(3);
    for (const { mark, closing = false } of panels) expect(words.includes(`${mark} C`)).toBe(closing);
    expect(words).toContain('C: closing panel, measure on the wall before cutting');
  });

  it('are not spoken of where there are none', () => {
    const worked = laidFrom(400);
    const { panels } = worked.walls[0]!.zones[0]!.layout!;
    expect(panels.some(({ closing, full }) => closing && !full)).toBe(false);
    expect(wordsOf(worked)).not.toContain('closing');
  });
});
