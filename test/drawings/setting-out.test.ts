import { describe, expect, it } from 'vitest';
import { measureWith } from '../../core/drawings/fonts';
import { scales } from '../../core/drawings/paper';
import { settingOutSheet } from '../../core/drawings/setting-out';
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
    crowdedWall('C', 6000, 2600, 60, [
      zone('Z1', 1400, 300, 4500, 2400 - 300, { stock: 'S2', start: 'best', jointGap: 2 }),
    ]),
    ...[1, 2, 3, 4, 5, 6].map((seed) =>
      crowdedWall(
        `R${seed}`,
        2600 + seed * 700,
        2300 + seed * 90,
        seed * 4,
        [
          zone('Z1', 1400, 400 + seed * 11, 900 + seed * 350, 1500, {
            ...lowerLeft,
            stagger: seed % 2 ? 0.3 : 0,
          }),
        ],
        seed,
      ),
    ),
  ]),
);

const documents = [...workedJobs, ['crowded', crowded] as const, ['odd', oddWalls] as const].flatMap(
  ([name, worked]) =>
    worked.walls.map(
      (wall, i) => [`${name} ${wall.survey.wall.id}`, wall, settingOutSheet(worked, i, measure)] as const,
    ),
);

describe.each(documents)('the setting-out sheet of wall %s', (_, wall, document) => {
  it('lays no text on another, none out of the frame, none under 2.5 mm', () => {
    expect(textFaults(document, measure, true)).toEqual([]);
  });

  it('shows the mark of every panel on a drawing and in the table', () => {
    const words = wordsOf(document);
    const drawn = document.pages.flatMap(textsOf);
    for (const { mark } of wall.zones.flatMap(({ layout }) => layout?.panels ?? [])) {
      expect(drawn).toContain(mark);
      const short = mark.slice(mark.lastIndexOf('-') + 1);
      const noted = words.includes('Too small to be marked') && words.split('Too small')[1]!.includes(mark);
      // A closing panel's number has a sign after it.
      expect(drawn.includes(short) || drawn.includes(`${short} C`) || noted).toBe(true);
    }
  });

  it('names every opening, fitting and zone', () => {
    const words = new Set(wordsOf(document).split(/[\s,:]+/));
    const { openings, fittings, zones } = wall.survey.wall;
    for (const { id } of [...openings, ...fittings, ...zones]) expect(words).toContain(id);
  });

  it('has a scale of ISO 5455 on every drawing and its sheets counted', () => {
    document.pages.forEach((page, i) => {
      const texts = textsOf(page);
      const scale =
        texts.find((text) => /^SCALE /.test(text)) ?? texts.find((text) => text === 'not to scale');
      expect(['not to scale', ...scales.map(({ paper, real }) => `SCALE ${paper}:${real}`)]).toContain(scale);
      expect(texts).toContain(`${i + 1} of ${document.pages.length}`);
    });
    expect(textsOf(document.pages[0]!).join(' ')).toContain(
      'Check on site before cutting. Do not scale off this drawing.',
    );
  });

  it('prints in ink and red lead alone, so that it photocopies', () => {
    const colours = document.pages.flatMap(({ items }) =>
      items.flatMap((item) => [
        'colour' in item ? item.colour : undefined,
        'fill' in item ? (item.fill ?? undefined) : undefined,
      ]),
    );
    expect([...new Set(colours)].filter((colour) => !allowed.has(colour))).toEqual([]);
  });

  it('draws lines of the ISO 128 series, wide and narrow at least 2 : 1', () => {
    const widths = new Set(
      document.pages.flatMap(({ items }) =>
        items.flatMap((item) => ('width' in item && typeof item.width === 'number' ? [item.width] : [])),
      ),
    );
    for (const width of widths) expect([0.18, 0.25, 0.35, 0.5, 0.7, 1]).toContain(width);
    expect(Math.max(...widths) / Math.min(...widths)).toBeGreaterThanOrEqual(2);
  });
});

const allowed = new Set([undefined, 'ink', 'soft', 'red-lead', 'white']);

describe('the running dimensions of the demo', () => {
  const [, , proofing] = documents.find(([name]) => name === 'demo A')!;
  it('give the door, the zone and the overall size from one datum', () => {
    const texts = textsOf(proofing.pages[0]!);
    for (const figure of ['220', '1146', '1420', '3420', '5400', '(5400)', '2040', '(2700)', '700', '2450']) {
      expect(texts).toContain(figure);
    }
  });
});

describe('a wall too crowded for one page', () => {
  const [, , long] = documents.find(([name]) => name === 'crowded B')!;
  it('comes in parts at 1:20 behind a key plan that names the sheets', () => {
    const key = textsOf(long.pages[0]!);
    expect(key).toContain('sheet 2');
    expect(key).toContain('30000');
    const parts = long.pages.filter((page) => textsOf(page).includes('SCALE 1:20'));
    expect(parts.length).toBeGreaterThanOrEqual(5);
    expect(textsOf(parts[1]!).filter((text) => text.startsWith('continues on sheet'))).toHaveLength(2);
  });
});

describe('a wall that does not begin at its datum', () => {
  const firstPage = (name: string) => documents.find(([title]) => title === name)![2].pages[0]!;

  it('says where the datum is, and dimensions to both sides of it', () => {
    const texts = textsOf(firstPage('odd Negative'));
    const words = texts.join(' ');
    expect(words).toContain('finished floor level 1200 from the left end of the wall');
    for (const figure of ['−1200', '−300', '3000', '2700', '(4200)', '(3000)'])
      expect(texts).toContain(figure);
  });

  it('says how far off it lies where the wall does not reach it', () => {
    const words = textsOf(firstPage('odd Away')).join(' ');
    expect(words).toContain('the wall begins 5000 to its right and 800 above it');
    expect(words).not.toContain('open circle');
  });
});

describe('a tiny wall', () => {
  it('is drawn at 1:5 with its scale bar explained in full', () => {
    const [, , tiny] = documents.find(([title]) => title === 'odd TinyBare')!;
    expect(tiny.pages).toHaveLength(1);
    expect(textsOf(tiny.pages[0]!)).toEqual(
      expect.arrayContaining(['SCALE 1:5', 'The bar is 40 mm long on a true print.', '(300)', '(200)']),
    );
  });
});

describe('a wall that does not exist', () => {
  it('has no setting-out sheet', () => {
    expect(() => settingOutSheet(crowded, 99, measure)).toThrow('no wall');
  });
});
