import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { measureWith } from '../../core/drawings/fonts';
import { writePdf } from '../../core/drawings/pdf';
import { jobTemplates } from '../../core/drawings/template-shapes';
import { templates } from '../../core/drawings/templates';
import { papers } from '../../core/job/paper-sizes';
import { jobSchema, type Job } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import { fontFiles } from './font-files';
import { oddWalls } from './odd-walls';
import { textFaults, textsOf } from './page-checks';
import { readPdf, type ReadPage } from './read-pdf';
import { workedJobs } from './worked-jobs';

const measure = measureWith(fontFiles);
const date = new Date(Date.UTC(2026, 2, 2));

/** One wall of two whole sheets' width, a round pipe and a large rectangular fitting in the steel. */
function jobWith(fittings: readonly object[], width = 2000, paper: (typeof papers)[number] = 'A4'): Job {
  return v.parse(jobSchema, {
    format: 'lodeplan-job',
    version: 1,
    name: 'Templates',
    stock: [{ id: 'S1', width: 1000, height: 1500, thickness: 0.5 }],
    printing: { templates: { paper } },
    walls: [
      {
        id: 'A',
        outline: [
          [0, 0],
          [width, 0],
          [width, 1500],
          [0, 1500],
        ],
        fittings,
        zones: [
          {
            id: 'Z1',
            buildUp: 'steel-panel',
            shape: [
              [0, 0],
              [width, 0],
              [width, 1500],
              [0, 1500],
            ],
            layout: { stock: 'S1', start: 'lower-left' },
          },
        ],
      },
    ],
  });
}

const pipe = (id: string, x: number, y: number) => ({
  id,
  kind: 'pipe',
  circle: { x, y, diameter: 70 },
  clearance: 5,
});
const board = { id: 'B1', kind: 'free', x: 300, y: 400, width: 377.7, height: 555.5, clearance: 0 };

async function printed(job: Job): Promise<ReadPage[]> {
  const drawn = templates(workOutFully(job, { steps: 1 }), measure);
  return (await readPdf(await writePdf(drawn, fontFiles, { date }))).pages.slice(1);
}

const cutsOf = ({ strokes }: ReadPage) =>
  strokes.filter(({ width, points }) => Math.abs(width - 0.5) < 1e-3 && points.every(([, y]) => y > 44));
const barOf = ({ strokes }: ReadPage) => strokes.find(({ width }) => Math.abs(width - 0.7) < 1e-3)!;

describe.each([...workedJobs, ['odd walls', oddWalls] as const])('templates of the job %s', (_, worked) => {
  it.each(papers)('lay no text on another on %s, each page has its bar', (paper) => {
    const job = { ...worked.job, printing: { templates: { paper } } };
    const drawn = templates({ ...worked, job }, measure);
    expect(textFaults(drawn, measure, false)).toEqual([]);
    for (const page of drawn.pages) expect(page.format).toBe(paper);
  });

  it('print each cut-out once, with every panel that has it', () => {
    const { shapes } = jobTemplates(worked);
    const keys = shapes.map(({ ring, kind, sides }) => JSON.stringify([kind, sides, ring]));
    expect(new Set(keys).size).toBe(keys.length);
  });
});

describe('templates read back from the PDF with pdfjs-dist', () => {
  it.each(papers)('have a bar of 100 mm on every page of %s', async (paper) => {
    const pages = await printed(jobWith([board, pipe('P1', 1500, 700)], 2000, paper));
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages) {
      const [[from, y], [to, level]] = barOf(page).points as [[number, number], [number, number]];
      expect(Math.abs(to - from - 100)).toBeLessThan(0.05);
      expect(level).toBeCloseTo(y, 6);
    }
  });

  it('are true to 0.05 mm on one page: a round hole is as wide as pipe and clearance', async () => {
    const [page] = await printed(jobWith([pipe('P1', 500, 700)]));
    const points = cutsOf(page!).flatMap((stroke) => stroke.points);
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    // 70 + 2 × 5, the polygon outside the circle by 0.02 mm at the most.
    expect(Math.abs(Math.max(...xs) - Math.min(...xs) - 80)).toBeLessThan(0.05);
    expect(Math.abs(Math.max(...ys) - Math.min(...ys) - 80)).toBeLessThan(0.05);
    const middle = [(Math.max(...xs) + Math.min(...xs)) / 2, (Math.max(...ys) + Math.min(...ys)) / 2];
    for (const [x, y] of points) {
      expect(Math.abs(Math.hypot(x - middle[0]!, y - middle[1]!) - 40)).toBeLessThan(0.05);
    }
  });

  it('are true to 0.05 mm over several pages, laid on one another by their marks', async () => {
    const pages = await printed(jobWith([board]));
    expect(pages.length).toBeGreaterThan(3);
    const marksOf = (page: ReadPage) =>
      new Map(page.texts.filter(({ text }) => /^[A-Z]{1,2}$/.test(text)).map((text) => [text.text, text]));
    const at = new Map<ReadPage, readonly [number, number]>([[pages[0]!, [0, 0]]]);
    // Each page is laid on one that lies already, by a mark that both have; every other mark must then fit as well.
    for (let laid = 0; laid < at.size; laid++) {
      const [under, [dx, dy]] = [...at][laid]!;
      for (const page of pages) {
        for (const [letter, here] of marksOf(page)) {
          const there = marksOf(under).get(letter);
          if (!there || page === under) continue;
          const offset = [there.x + dx - here.x, there.y + dy - here.y] as const;
          const known = at.get(page);
          if (!known) at.set(page, offset);
          else {
            expect(Math.abs(known[0] - offset[0])).toBeLessThan(0.01);
            expect(Math.abs(known[1] - offset[1])).toBeLessThan(0.01);
          }
        }
      }
    }
    expect(at.size).toBe(pages.length);
    const points = pages.flatMap((page) => {
      const [dx, dy] = at.get(page)!;
      return cutsOf(page).flatMap((stroke) => stroke.points.map(([x, y]) => [x + dx, y + dy] as const));
    });
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    expect(Math.abs(Math.max(...xs) - Math.min(...xs) - 377.7)).toBeLessThan(0.05);
    expect(Math.abs(Math.max(...ys) - Math.min(...ys) - 555.5)).toBeLessThan(0.05);
  });

  it('are the same bytes from the same job', async () => {
    const drawn = () => templates(workOutFully(jobWith([board]), { steps: 1 }), measure);
    const [one, other] = [
      await writePdf(drawn(), fontFiles, { date }),
      await writePdf(drawn(), fontFiles, { date }),
    ];
    expect(one).toEqual(other);
  });
});

describe('templates', () => {
  it('of panels cut alike are printed once and list where each panel has its hole', () => {
    const worked = workOutFully(jobWith([pipe('P1', 500, 700), pipe('P2', 1600, 720)]), { steps: 1 });
    const { shapes } = jobTemplates(worked);
    expect(shapes).toHaveLength(1);
    expect(shapes[0]!.uses.map(({ x, y }) => [x / 100, y / 100])).toEqual([
      [500, 700],
      [600, 720],
    ]);
    const texts = textsOf(templates(worked, measure).pages[0]!);
    for (const figure of ['500', '700', '600', '720']) expect(texts).toContain(figure);
  });

  it('leave large straight cut-outs to rule and square, and say so', () => {
    const door = { id: 'B1', kind: 'free', x: 200, y: 0, width: 700, height: 1200, clearance: 0 };
    const worked = workOutFully(jobWith([door, pipe('P1', 1500, 700)]), { steps: 1 });
    expect(jobTemplates(worked).byRule).toBe(1);
    expect(textsOf(templates(worked, measure).pages[0]!).join(' ')).toContain('rule and square');
  });

  it('are left out where no panel has a cut-out', () => {
    expect(templates(workOutFully(jobWith([]), { steps: 1 }), measure).pages).toEqual([]);
  });

  it.each([1000, 30_000])('of a wall %i mm long keep their texts apart', (width) => {
    const fittings = Array.from({ length: Math.floor(width / 700) }, (_, i) => ({
      ...pipe(`P${i}`, 400 + i * 700, 300 + (i % 7) * 50),
    }));
    const drawn = templates(workOutFully(jobWith(fittings, width), { steps: 1 }), measure);
    expect(drawn.pages.length).toBeGreaterThan(1);
    expect(textFaults(drawn, measure, false)).toEqual([]);
  });
});
