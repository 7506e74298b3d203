import { describe, expect, it } from 'vitest';
import { clientView } from '../../core/drawings/client-view';
import { composeDocuments } from '../../core/drawings/compose';
import { measureWith } from '../../core/drawings/fonts';
import { markingsSheet } from '../../core/drawings/markings-sheet';
import type { LodeplanDocument } from '../../core/drawings/page';
import { pageSize } from '../../core/drawings/paper';
import { picturesInFile } from '../../core/drawings/pictures';
import { demoJob } from '../../core/job/demo';
import type { Marking } from '../../core/job/marking-schema';
import { readJobObject } from '../../core/job/read';
import type { Job } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import { markedJob } from '../markings/marked-job';
import { fontFiles } from './font-files';
import { textFaults, textsOf } from './page-checks';

const measure = measureWith(fontFiles);

/** The marked job with one marking otherwise. */
function withMarking(zone: number, patch: object): Job {
  const job = markedJob();
  const [wall] = job.walls;
  const zones = wall!.zones.map((one, i) =>
    i === zone
      ? { ...one, markings: one.markings!.map((marking) => ({ ...marking, ...patch }) as Marking) }
      : one,
  );
  const { job: read, findings } = readJobObject({ ...job, walls: [{ ...wall!, zones }] });
  if (!read) throw new Error(findings[0]!.text);
  return read;
}

function sheetOf(job: Job): LodeplanDocument {
  return markingsSheet(workOutFully(job, { steps: 1 }), 0, measure, picturesInFile(job));
}

const jobs: readonly (readonly [string, Job])[] = [
  ['a week plan, a board and a map', markedJob()],
  ['the demo', demoJob()],
  [
    'a table of narrow columns',
    withMarking(0, { columns: Array.from({ length: 30 }, (_, i) => `Press ${i}`) }),
  ],
  [
    'a grid too fine for its figures',
    withMarking(0, { kind: 'ruled-grid', spacingAcross: 10, spacingUp: 5, lineWidth: 1 }),
  ],
  ['a week plan in feet and inches', { ...markedJob(), units: 'ft-in' } as Job],
  ['a marking far off its zone', withMarking(1, { x: 2500, y: -900 })],
];

describe.each(jobs)('the markings sheet of %s', (_, job) => {
  const document = sheetOf(job);

  it('lays no text on another, none outside its frame, none too small to be read', () => {
    expect(document.pages.length).toBeGreaterThan(0);
    expect(textFaults(document, measure, true)).toEqual([]);
  });

  it('draws nothing outside its frame', () => {
    for (const page of document.pages) {
      const { width, height } = pageSize(page);
      for (const item of page.items) {
        if (item.kind !== 'stroke') continue;
        for (const { x, y } of item.points) expect(x >= 0 && x <= width && y >= 0 && y <= height).toBe(true);
      }
    }
  });

  it('says on each page which revision it shows', () => {
    for (const page of document.pages) {
      const texts = textsOf(page);
      expect(texts[texts.indexOf('Revision') + 1]).toBe(job.revision);
    }
  });
});

describe('figures of a markings sheet, worked by hand', () => {
  const [plan, board, map] = sheetOf(markedJob()).pages.map(textsOf);

  it('a board of 8 × 8 squares of 120, its corner 120 from the zone’s left and 920 above the floor', () => {
    for (let n = 0; n <= 8; n++) {
      expect(board).toContain(String(120 + 120 * n));
      expect(board).toContain(String(920 + 120 * n));
    }
    expect(board!.join(' ')).toContain('8 × 8 squares of 120 mm');
  });

  it('a week plan of five columns and three rows under headings of 100', () => {
    for (const figure of [320, 640, 960, 1280, 1600]) expect(plan).toContain(String(figure));
    // 1200 − 100 in three rows: 366,67 each, up from 800, to a tenth.
    for (const figure of ['800', '1166,7', '1533,3', '1900', '2000']) expect(plan).toContain(figure);
    for (const day of ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday']) expect(plan).toContain(day);
  });

  it('a map of 1500 × 750, of which only the edges are measured', () => {
    for (const figure of ['200', '1700', '975', '1725']) expect(map).toContain(figure);
    expect(map!.join(' ')).toContain('1500 mm × 750 mm');
  });

  it('lists the lines of a grid that is too fine in a table', () => {
    const job = withMarking(0, {
      kind: 'ruled-grid',
      width: 1000,
      height: 500,
      spacingAcross: 10,
      spacingUp: 5,
      lineWidth: 1,
    });
    const texts = sheetOf(job).pages.flatMap(textsOf);
    // 101 upright lines from the zone's left, 101 level ones from 800 above the floor.
    for (const figure of ['10', '500', '990', '1000', '805', '1295', '1300']) expect(texts).toContain(figure);
    expect(texts.join(' ')).toContain('see the table');
  });
});

describe('the documents of a job with markings', () => {
  it('have a markings sheet for each wall that has some, and for no other', () => {
    const names = (job: Job) =>
      composeDocuments(workOutFully(job, { steps: 1 }), measure).map(({ name }) => name);
    expect(names(markedJob())).toEqual([
      ...[
        'setting-out-B',
        'markings-B',
        'client-view',
        'materials-list',
        'programme',
        'day-sheets',
        'offer',
        'care-sheet',
        'handover-pack',
      ],
    ]);
    expect(names(demoJob()).filter((name) => name.startsWith('markings'))).toEqual(['markings-A']);
  });

  it('show the client the markings as they will look, letters to scale', () => {
    const job = markedJob();
    const [page] = clientView(workOutFully(job, { steps: 1 }), measure, picturesInFile(job)).pages;
    const wall = page!.items.find((item) => item.kind === 'stroke' && item.width === 0.5 && item.closed);
    const xs = wall?.kind === 'stroke' ? wall.points.map(({ x }) => x) : [];
    const perMm = (Math.max(...xs) - Math.min(...xs)) / 6000;
    const letters = page!.items.filter((item) => item.kind === 'lettering');
    expect(letters.map(({ text }) => text)).toEqual(['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday']);
    for (const { height, colour } of letters) {
      expect(height).toBeCloseTo(30 * perMm, 6);
      // On chalk the lines are light.
      expect(colour).toBe('paper');
    }
    const art = page!.items.filter((item) => item.kind === 'art' && item.fill === '#c08040');
    expect(art).toHaveLength(1);
    // The table on the map: 200 of its 1000 units across, on 1500 mm.
    const round = art.flatMap((item) =>
      item.kind === 'art' ? item.chains[0]!.points.map(({ x }) => x) : [],
    );
    expect(Math.max(...round) - Math.min(...round)).toBeCloseTo(300 * perMm, 2);
  });
});
