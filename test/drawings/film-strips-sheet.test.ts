import { beforeAll, describe, expect, it } from 'vitest';
import { filmStripsSheet } from '../../core/drawings/film-strips-sheet';
import { measureWith } from '../../core/drawings/fonts';
import type { LodeplanDocument } from '../../core/drawings/page';
import { demoJob } from '../../core/job/demo';
import type { Job } from '../../core/job/schema';
import { piecesOfPlan } from '../../core/quantities/film-pieces';
import { box, jobOf, wallOf, workedTakeOff } from '../quantities/worked-jobs';
import { fontFiles } from './font-files';
import { textFaults, textsOf, wordsOf } from './page-checks';

const measure = measureWith(fontFiles);

const film = (id: string, layer: string, fields: object = {}) => ({
  id,
  name: `Film ${id}`,
  layer,
  unit: 'm2',
  rollWidth: 1220,
  packs: [{ size: 12.2, price: 200 }],
  ...fields,
});
const wholeWall = { id: 'Z1', buildUp: 'writable-film', layers: 'own', shape: box(0, 0, 6000, 3000) };
const filmJob = (product: object, wall: object, quantities: object = {}): Job =>
  jobOf({
    products: [film('w', 'writable-film', product)],
    quantities: { filmTrim: 25, filmOverlap: 20, ...quantities },
    buildUps: [{ id: 'own', kind: 'writable-film', layers: [{ kind: 'writable-film', product: 'w' }] }],
    walls: [wallOf({ zones: [wholeWall], ...wall })],
  });

/** Two films one on the other round a door, a socket over a seam, a slope. */
const layered = jobOf({
  ...demoJob(),
  walls: [
    {
      ...demoJob().walls[0],
      hung: [],
      zones: [
        {
          id: 'Z1',
          name: 'Proofs',
          buildUp: 'magnetic-film-writable',
          shape: [
            [1100, 200],
            [5180, 200],
            [5180, 2000],
            [3900, 2500],
            [1100, 2500],
          ],
        },
      ],
    },
  ],
});
/** Strips of 61 mm, as narrow as they come: neither numbers nor figures have room. */
const narrow = filmJob({ rollWidth: 81 }, {}, { filmDirection: 'upright', filmTrim: 10 });
const jobs = {
  'one film': filmJob(
    {},
    { openings: [{ id: 'D1', kind: 'door', x: 2000, y: 0, width: 950, height: 2100 }] },
  ),
  'two films in the demo': layered,
  'level strips': filmJob({}, {}, { filmDirection: 'level' }),
  'narrow strips': narrow,
  'feet and inches': { ...filmJob({}, {}), units: 'ft-in' as const },
  'a hall of 80 m': filmJob(
    {},
    { outline: box(0, 0, 80_000, 3000), zones: [{ ...wholeWall, shape: box(0, 0, 80_000, 3000) }] },
  ),
  'a wall of 300 m': filmJob(
    {},
    { outline: box(0, 0, 300_000, 3000), zones: [{ ...wholeWall, shape: box(0, 0, 300_000, 3000) }] },
  ),
  'no rolls': filmJob({ packs: [] }, {}),
};
const sheetOf = (job: Job) => {
  const { worked, off } = workedTakeOff(job);
  return { worked, off, sheet: filmStripsSheet(worked, off, measure) };
};

describe.each(Object.entries(jobs))('the film strips of %s', (_, job) => {
  let made: ReturnType<typeof sheetOf>;
  let sheet: LodeplanDocument;
  beforeAll(() => {
    made = sheetOf(job);
    sheet = made.sheet;
  });

  it('lay no text on another, none out of the frame, none under 2.5 mm', () => {
    expect(sheet.pages.length).toBeGreaterThan(0);
    expect(textFaults(sheet, measure, true)).toEqual([]);
  });

  it('list every piece with its length and width', () => {
    const texts = sheet.pages.flatMap(textsOf);
    const pieces = made.off.films.flatMap(({ plan }) => piecesOfPlan(plan, { overlap: 0, trim: 0 }));
    expect(pieces.length).toBeGreaterThan(1);
    for (const { mark } of pieces) expect(texts).toContain(mark);
  });

  it('print in ink and red lead alone', () => {
    const allowed = new Set([undefined, 'ink', 'soft', 'red-lead', 'white']);
    const items = sheet.pages.flatMap((page) => page.items);
    for (const item of items) expect(allowed.has('colour' in item ? item.colour : undefined)).toBe(true);
  });

  it('say on each page which one of how many it is', () => {
    sheet.pages.forEach((page, i) => expect(textsOf(page)).toContain(`${i + 1} of ${sheet.pages.length}`));
  });
});

describe('what a sheet of film strips says', () => {
  const wordsOfJob = (job: Job) => wordsOf(sheetOf(job).sheet).replaceAll('\n', ' ');

  it('of each strip: roll, length, width, where it shows and hangs, what is cut out', () => {
    const upright = filmJob(
      {},
      { fittings: [{ id: 'K1', kind: 'socket', x: 500, y: 300, width: 80, height: 80 }] },
      { filmDirection: 'upright' },
    );
    const texts = sheetOf(upright).sheet.pages.flatMap(textsOf);
    const edges = texts.indexOf('0 – 1185');
    expect(texts.slice(edges - 4, edges + 3)).toEqual([
      '1',
      '1',
      '3050',
      '1220',
      '0 – 1185',
      '−25 – 3025',
      'socket K1',
    ]);
  });

  it('what each roll gives, and what is left of it', () => {
    // Six strips of 3.05 m: three from each roll of 10 m.
    const words = wordsOfJob(filmJob({}, {}, { filmDirection: 'upright' }));
    expect(words).toMatch(/3050 for A-Z1 strip 1, 3050 for A-Z1 strip 2, 3050 for A-Z1\s+strip 3/);
    expect(words).toContain('10,0 m 0,9 m');
  });

  it('in words what found no room in the picture', () => {
    const words = wordsOfJob(narrow);
    expect(words).toContain('Too narrow here for their numbers: strips 1, 2, 3, 4, 5, 6 and');
    expect(words).toContain('There is no room here for running figures: edges and seams stand in the list.');
  });

  it('a dash for the roll where none is known', () => {
    const texts = sheetOf(jobs['no rolls']).sheet.pages.flatMap(textsOf);
    expect(texts).toContain('–');
    expect(texts).not.toContain('Cut from it, the longest first');
  });

  it('nothing where no film is laid', () => {
    expect(sheetOf(jobOf({ walls: [wallOf({})] })).sheet.pages).toEqual([]);
  });
});

describe('the picture of strips', () => {
  const red = ({ sheet }: ReturnType<typeof sheetOf>) =>
    sheet.pages.flatMap(({ items }) =>
      items.flatMap((item) => (item.kind === 'stroke' && item.colour === 'red-lead' ? [item] : [])),
    );

  it('has a seam for each of the plan', () => {
    const made = sheetOf(filmJob({}, {}, { filmDirection: 'upright' }));
    expect(red(made)).toHaveLength(made.off.films[0]!.plan.seams.length);
  });

  it('draws to scale: strips of 1185 mm at 1:50 are 23.7 mm wide', () => {
    const made = sheetOf(filmJob({}, {}, { filmDirection: 'upright' }));
    expect(wordsOf(made.sheet)).toContain('Scale 1:50.');
    const [first, second] = red(made).map(({ points }) => points[0]!.x);
    const [a, b] = made.off.films[0]!.plan.seams;
    expect(second! - first!).toBeCloseTo((b! - a!) / 100 / 50, 6);
  });

  it('puts no number on an opening where there is film for it', () => {
    const door = { id: 'D1', kind: 'door', x: 200, y: 1000, width: 700, height: 1000 };
    const made = sheetOf(filmJob({}, { openings: [door] }, { filmDirection: 'upright' }));
    const mark = made.sheet.pages[0]!.items.find(
      (item) => item.kind === 'text' && item.text === '1' && item.height > 2.5,
    );
    const seam = red(made)[0]!.points.map(({ y }) => y);
    const foot = Math.min(...seam);
    if (mark?.kind !== 'text') throw new Error('strip 1 has no number');
    const height = (mark.at.y - foot) * 50;
    expect(height < 1000 - 100 || height > 2000).toBe(true);
  });
});
