import { describe, expect, it } from 'vitest';
import { clientView } from '../../core/drawings/client-view';
import { measureWith } from '../../core/drawings/fonts';
import { holdingMapSheet } from '../../core/drawings/holding-map-sheet';
import { marksInWords } from '../../core/drawings/holding-map-words';
import type { LodeplanDocument, Page } from '../../core/drawings/page';
import { scales } from '../../core/drawings/paper';
import { refuseWithoutCautions } from '../../core/drawings/refuse-without-cautions';
import { weightDown } from '../../core/holding/map-words';
import { holdingCautions } from '../../core/holding/safety';
import { lengthUnits } from '../../core/lengths';
import { setHoldingMap } from '../../core/job/holding-map';
import { demoJob } from '../../core/job/demo';
import { workOutFully } from '../../core/run/pipeline';
import type { WorkedOut } from '../../core/worked-out';
import { jobWith, rectangle } from '../holding/hung-job';
import { crowdedWall, jobOf, workedOutOf, zone } from './crowded-job';
import { fontFiles } from './font-files';
import { oddWalls } from './odd-walls';
import { textFaults, textsOf, wordsOf } from './page-checks';
import { workedJobs } from './worked-jobs';

const measure = measureWith(fontFiles);
const lowerLeft = { stock: 'S1', start: 'lower-left' };
const crowded = workedOutOf(
  jobOf([
    crowdedWall('A', 12000, 2700, 60, [zone('Z1', 1400, 100, 10400, 2500, lowerLeft)]),
    crowdedWall('B', 30000, 2800, 25, [zone('Z1', 1400, 100, 28000, 2500, { ...lowerLeft, stagger: 0.5 })]),
  ]),
);
const demo = workedJobs.find(([name]) => name === 'demo')![1];

const drawn = [...workedJobs, ['crowded', crowded] as const, ['odd', oddWalls] as const]
  .flatMap(([name, worked]) =>
    worked.walls.map(
      ({ survey }, i) => [`${name} ${survey.wall.id}`, holdingMapSheet(worked, i, measure)] as const,
    ),
  )
  .filter(([, { pages }]) => pages.length > 0);

const spoken = (page: Page) => textsOf(page).join(' ').replace(/\s+/g, ' ');

describe.each(drawn)('the holding map of wall %s', (_, document) => {
  it('lays no text on another, none out of the frame, none under 2.5 mm', () => {
    expect(textFaults(document, measure, true)).toEqual([]);
  });

  it('carries every caution on every page', () => {
    for (const page of document.pages)
      for (const { text } of holdingCautions) expect(spoken(page)).toContain(text);
  });

  it('is to a standard scale, in ink and red lead alone', () => {
    const allowed = new Set<unknown>([undefined, 'ink', 'soft', 'red-lead', 'white']);
    for (const { items } of document.pages)
      for (const item of items) {
        expect(allowed.has('colour' in item ? item.colour : undefined)).toBe(true);
        expect(allowed.has('fill' in item ? item.fill : undefined)).toBe(true);
      }
    for (const page of document.pages) {
      const scale = textsOf(page).find((text) => /^SCALE /.test(text) || text === 'not to scale');
      expect(['not to scale', ...scales.map(({ paper, real }) => `SCALE ${paper}:${real}`)]).toContain(scale);
    }
  });

  it('has the number of every band in the key, on the drawing or in a note, and in the table', () => {
    const maps = document.pages.filter((page) => textsOf(page).some((text) => text.startsWith('(1) ')));
    const table = textsOf(document.pages.find((page) => textsOf(page).includes('Band'))!);
    expect(maps.length).toBeGreaterThan(0);
    const numbers = new Set(
      maps.flatMap((page) =>
        textsOf(page).flatMap((text) => (/^\((\d+)\) /.exec(text) ? [text.split(' ')[0]!] : [])),
      ),
    );
    for (const number of numbers) {
      const marked = maps.some((page) =>
        textsOf(page).some((text) => !text.startsWith(number) && text.includes(number)),
      );
      // Panels of 50 cm at 1:50 have room for the weight alone: its words are those of the key.
      const words = maps.flatMap(textsOf).find((text) => text.startsWith(`${number} `))!;
      const alone = maps.some((page) =>
        textsOf(page).some((text) => text.replace(/\s/g, ' ') === words.slice(number.length + 1)),
      );
      expect(marked || alone, `${number} is not on the drawing`).toBe(true);
      expect(table).toContain(number);
    }
  });
});

describe('a page of a holding map', () => {
  it('is refused without one of its cautions, be it a drawing or a table', () => {
    const { pages } = holdingMapSheet(demo, 0, measure);
    for (const at of pages.keys()) {
      const lacking = pages.map((page, i) => ({
        ...page,
        items: page.items.filter(
          (item) => i !== at || item.kind !== 'text' || !item.text.includes('look again'),
        ),
      }));
      expect(() => refuseWithoutCautions(lacking, 'all')).toThrow(`Page ${at + 1}`);
    }
  });
});

describe('what the demo’s maps say', () => {
  const [proofing, store, stair] = demo.walls.map((_, i) => holdingMapSheet(demo, i, measure));
  const words = (document?: LodeplanDocument) => wordsOf(document!).replace(/\s+/g, ' ');

  it('of a wall that was tested: that it was, and half near an edge', () => {
    // The lowest of the demo's readings is 17.9 N.
    expect(words(proofing)).toContain('(1) 100 g pull 17,9 N, clear of edges, pull test on site');
    expect(words(proofing)).toContain('(2) 50 g pull 8,9 N, near an edge');
    expect(words(proofing)).toContain('nearer than 30 mm to an edge, joint, hole or screw head');
  });

  it('of a coating without a test: that nothing is known there', () => {
    expect(words(store)).toMatch(/\(\d\) not known (everywhere, )?coating, no test yet/);
    expect(words(store)).toContain('How much iron a magnetic coating holds is not known');
  });

  it('of a zone over people: nothing, and why', () => {
    expect(words(stair)).toContain('people below');
    expect(words(stair)).toContain('add a mechanical stop');
  });

  it('of what is taken for granted, and where it comes from', () => {
    expect(words(stair)).toContain('Taken for granted');
    expect(words(stair)).toContain('Friction 0,2');
    expect(words(stair)).toContain('Furlani 2001');
  });
});

describe('a wall that holds no magnets', () => {
  it('has no map', () => {
    const bare = workOutFully(jobWith([], { wall: { zones: [] } }));
    expect(holdingMapSheet(bare, 0, measure).pages).toEqual([]);
  });
});

describe('maps in other units', () => {
  it.each(lengthUnits)('have no text on another, in %s', (units) => {
    const worked = { ...demo, job: { ...demo.job, units } };
    for (const [i] of worked.walls.entries())
      expect(textFaults(holdingMapSheet(worked, i, measure), measure, true)).toEqual([]);
  });

  it('weigh in ounces where lengths are in feet, never rounded up', () => {
    // 16 ounces are a pound of 0.45359237 kg (yard and pound agreement, 1959).
    const ounce = 0.45359237 / 16;
    expect(weightDown(3.59 * ounce, 'ft-in')).toBe('3.5 oz');
    expect(weightDown(8 * ounce, 'ft-in')).toBe('8 oz');
    expect(weightDown(8.99 * ounce, 'ft-in')).toBe('8.5 oz');
    expect(weightDown(39.9 * ounce, 'ft-in')).toBe('2.4 lb');
    const feet = wordsOf(holdingMapSheet({ ...demo, job: { ...demo.job, units: 'ft-in' } }, 0, measure));
    expect(feet).toContain('3,5 oz');
    expect(feet).not.toMatch(/\d g\b/);
  });
});

describe('marks of panels in words', () => {
  it.each([
    [[], ''],
    [['A-Z1-07'], 'A-Z1-07'],
    [['A-Z1-01', 'A-Z1-02', 'A-Z1-03', 'A-Z1-05'], 'A-Z1-01 to 03, A-Z1-05'],
    [['A-Z1-99', 'A-Z1-100', 'A-Z2-101'], 'A-Z1-99 to 100, A-Z2-101'],
    [['A-Z1-03', 'A-Z1-02'], 'A-Z1-03, A-Z1-02'],
  ])('%j: %s', (marks, words) => expect(marksInWords(marks)).toBe(words));
});

describe('the client view', () => {
  const asked = (worked: WorkedOut, forClient: boolean) => ({
    ...worked,
    job: setHoldingMap(worked.job, { forClient }),
  });
  const pagesOf = (worked: WorkedOut) => clientView(worked, measure).pages;
  const plain = pagesOf(demo);
  const shown = pagesOf(asked(demo, true));
  const maps = shown.filter((page) => spoken(page).includes('where a magnet holds'));

  it('shows the map only if the job wants it, after each wall that holds magnets', () => {
    expect(plain.some((page) => spoken(page).includes('where a magnet holds'))).toBe(false);
    expect(pagesOf(asked(demo, false))).toEqual(plain);
    expect(maps).toHaveLength(3);
    expect(shown).toHaveLength(plain.length + maps.length);
    shown.forEach((page, i) => expect(spoken(page)).toContain(`page ${i + 1} of ${shown.length}`));
  });

  it('says what a hook holds without the trade’s words, with every caution', () => {
    expect(spoken(maps[0]!)).toContain('Up to 100 g on one hook');
    expect(spoken(maps[0]!)).toContain('round magnet, 20 mm across and 5 mm thick');
    expect(spoken(maps[1]!)).toContain('Not known yet');
    expect(spoken(maps[2]!)).toContain('People are beneath');
    for (const page of maps) {
      for (const { text } of holdingCautions) expect(spoken(page)).toContain(text);
      expect(spoken(page)).not.toMatch(/\d N\b|\bband\b|derat|friction|nominal|newton/i);
    }
  });

  it('compares with office paper: 80 g/m² on a sixteenth of a square metre are 5 g (ISO 536, ISO 216)', () => {
    // 101 g by the note's formula from 17.9 N; 20 sheets of 4.99 g are 99.8 g.
    expect(spoken(maps[0]!)).toContain('as heavy as 20 sheets');
  });

  it.each(lengthUnits)('lays no text on another, in %s', (units) => {
    for (const [, worked] of [...workedJobs, ['odd', oddWalls] as const]) {
      const inUnits = { ...worked, job: { ...worked.job, units } };
      expect(textFaults(clientView(asked(inUnits, true), measure), measure, false)).toEqual([]);
    }
  });

  it('never says “up to” where only a test allows it', () => {
    const job = demoJob();
    const untested = {
      ...job,
      walls: job.walls.map((wall) => ({
        ...wall,
        zones: wall.zones.map(({ pullTests: _tests, ...of }) => of),
      })),
    };
    const hurts = setHoldingMap(untested, { forClient: true, use: 'could-hurt' });
    const pages = pagesOf(workOutFully(hurts, { steps: 1 }));
    expect(pages.some((page) => spoken(page).includes('Perhaps'))).toBe(true);
    for (const page of pages) expect(spoken(page)).not.toContain('Up to');
  });

  it('has no such page for a wall without steel or coating', () => {
    const job = jobWith([], {
      zone: { buildUp: 'writable', layers: undefined, layout: undefined, shape: rectangle(0, 0, 2000, 2000) },
    });
    const pages = pagesOf(asked(workOutFully(job), true));
    expect(pages).toHaveLength(1);
  });
});
