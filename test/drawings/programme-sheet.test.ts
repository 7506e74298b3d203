import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { measureWith } from '../../core/drawings/fonts';
import type { Fill, Item, Stroke } from '../../core/drawings/page';
import { programmeCsv } from '../../core/drawings/programme-csv';
import { drawTask } from '../../core/drawings/programme-marks';
import { chartRows, type ChartTask } from '../../core/drawings/programme-rows';
import { programmeSheet, programmeSvg } from '../../core/drawings/programme-sheet';
import { demoJob } from '../../core/job/demo';
import type { Job } from '../../core/job/schema';
import { planProgramme, type Programme } from '../../core/programme/programme';
import { workOutFully } from '../../core/run/pipeline';
import { taylorSecond } from '../programme/published-networks';
import { jobOf, productOf, wallsOf } from '../programme/small-zone';
import { fontFiles } from './font-files';
import { textFaults, textsOf } from './page-checks';

const measure = measureWith(fontFiles);
const finish = productOf({
  id: 'finish',
  name: 'Writable finish of a maker with a very long name for it, two-component, satin, white and wipeable',
  layer: 'writable',
  coats: 3,
  recoatLeast: 6,
  cure: 120,
});

function small(programme: Record<string, unknown> | undefined, zones = 1): [Job, Programme] {
  const job = jobOf(programme, {
    products: [finish],
    layers: [{ kind: 'writable', product: 'finish' }],
    zones,
  });
  return [job, planProgramme(job, wallsOf(job))];
}

function demo(): [Job, Programme] {
  const job = { ...demoJob(), programme: { start: '2026-03-02' } } as Job;
  return [job, planProgramme(job, workOutFully(job, { steps: 1 }).walls)];
}

/** Five tasks and an event a zone, three for all. */
const sixty = small({ start: '2026-03-02' }, 10);

const cases: readonly (readonly [string, readonly [Job, Programme]])[] = [
  ['of one zone', small({ start: '2026-03-02' })],
  ['without days', small(undefined)],
  ['of sixty tasks', sixty],
  ['of two years', small({ start: '2026-03-02', crew: 1, rates: { coat: 0.02, protect: 0.05 } }, 2)],
  ['from an order', small({ ordered: '2026-03-02' }, 3)],
  ['of the demo', demo()],
];

describe.each(cases)('the programme %s on paper', (_, [job, programme]) => {
  const sheet = programmeSheet(job, programme, measure);

  it('lays no text on another, none out of the frame, none under 2.5 mm', () => {
    expect(textFaults(sheet, measure, true)).toEqual([]);
  });

  it('names every task with the days on which it begins and ends, and says critical in words', () => {
    const printed = sheet.pages.flatMap(textsOf);
    const rows = chartRows(job, programme).filter((row): row is ChartTask => row.kind === 'task');
    expect(rows.length).toBeGreaterThan(programme.tasks.length);
    for (const { begins, ends } of rows) {
      if (begins) expect(printed).toContain(begins);
      expect(printed).toContain(ends);
    }
    const critical = programme.tasks.filter((task) => task.critical).length;
    expect(printed.filter((text) => text === 'critical').length).toBeGreaterThanOrEqual(critical);
  });

  it('is in ink alone, so that it photocopies', () => {
    const allowed = new Set([undefined, 'ink', 'soft', 'white', 'red-lead']);
    for (const item of sheet.pages.flatMap(({ items }) => items)) {
      expect(allowed.has('colour' in item ? item.colour : undefined)).toBe(true);
    }
  });

  it('keeps every bar inside the frame', () => {
    for (const { items } of sheet.pages) {
      for (const { x, y } of items.flatMap(pointsOf)) {
        expect(x).toBeGreaterThanOrEqual(15 - 1e-6);
        expect(x).toBeLessThanOrEqual(415 + 1e-6);
        expect(y).toBeGreaterThanOrEqual(5 - 1e-6);
        expect(y).toBeLessThanOrEqual(292 + 1e-6);
      }
    }
  });

  it('is a picture for the screen too', () => {
    const svg = programmeSvg(job, programme, measure)!;
    expect(svg).toContain('<svg xmlns');
    expect(svg).toContain('>Handover</text>');
  });
});

function pointsOf(item: Item): { x: number; y: number }[] {
  if (item.kind === 'stroke') return [...item.points];
  return item.kind === 'fill' ? item.rings.flat() : [];
}

describe('sixty tasks', () => {
  const [job, programme] = sixty;
  const sheet = programmeSheet(job, programme, measure);

  it('run over several pages, each with its number and its headings', () => {
    expect(programme.tasks.filter(({ work }) => work > 0).length).toBeGreaterThanOrEqual(50);
    expect(programme.tasks.length).toBeGreaterThanOrEqual(60);
    expect(sheet.pages.length).toBeGreaterThan(1);
    sheet.pages.forEach((page, i) => {
      expect(textsOf(page)).toContain(`${i + 1} of ${sheet.pages.length}`);
      expect(textsOf(page)).toContain('Begins');
    });
  });

  it('are each on one page', () => {
    const printed = sheet.pages.flatMap(textsOf);
    expect(printed.filter((text) => text === 'Protect and mask')).toHaveLength(10);
    expect(printed.filter((text) => text === 'Demask')).toHaveLength(10);
  });
});

describe('a zone of more coats than any page has rows', () => {
  const job = jobOf(
    { start: '2026-03-02' },
    {
      products: [{ ...finish, coats: 20 }],
      layers: Array.from({ length: 4 }, () => ({ kind: 'writable' as const, product: 'finish' })),
    },
  );
  const { pages } = programmeSheet(job, planProgramme(job, wallsOf(job)), measure);

  it('is named again on every page that it goes on to', () => {
    expect(pages.length).toBeGreaterThan(1);
    const named = pages.map((page) => textsOf(page).filter((text) => text.endsWith(', continued')));
    const goesOn = pages.map(
      (page) => textsOf(page).filter((text) => /^(Coat \d+ of 20|Demask|Ready for)/.test(text)).length,
    );
    expect(goesOn[1]).toBeGreaterThan(0);
    expect(named.map((texts) => texts.length)).toEqual(goesOn.map((rows, i) => (i > 0 && rows > 0 ? 1 : 0)));
  });
});

describe('signs of the bar chart', () => {
  const task = (fields: Partial<ChartTask>): ChartTask => ({
    ...{ kind: 'task', name: '', start: 0, finish: 100, mark: 'work', critical: false, waits: [] },
    ...{ begins: '', ends: '', float: '' },
    ...fields,
  });
  const drawn = (fields: Partial<ChartTask>) => drawTask(task(fields), (minute) => minute, 0);
  const heightOf = (items: readonly Item[]) => {
    const ys = items.flatMap(pointsOf).map(({ y }) => y);
    return Math.max(...ys) - Math.min(...ys);
  };

  it('give no bar to a dummy: Taylor’s second network has thirteen rows and twelve bars', () => {
    const bars = taylorSecond.flatMap(([name, duration, start, end]) =>
      drawn({ name, start, finish: end, mark: duration === 0 ? 'none' : 'work' }).filter(
        ({ kind }) => kind === 'fill',
      ),
    );
    expect(bars).toHaveLength(12);
  });

  it('tell critical tasks, other tasks and waits apart by shape', () => {
    const critical = drawn({ critical: true });
    const usual = drawn({});
    expect(critical.map(({ kind }) => kind)).toEqual(['fill']);
    expect((critical[0] as Fill).colour).toBe('ink');
    expect((usual[0] as Fill).colour).toBe('white');
    expect(heightOf(critical)).toBeGreaterThan(1.5 * heightOf(usual));
    const wait = drawn({ waits: [{ start: 100, finish: 400 }] })[0] as Stroke;
    expect([wait.line, wait.points.at(-1)!.x]).toEqual(['dashed', 400]);
  });

  it('show a task of minutes', () => {
    const xs = drawn({ start: 10, finish: 10.001 })
      .flatMap(pointsOf)
      .map(({ x }) => x);
    expect(Math.max(...xs) - Math.min(...xs)).toBeGreaterThan(0.5);
  });
});

describe('nothing to do', () => {
  it('has no sheet and no picture', () => {
    const job = jobOf({ start: '2026-03-02' });
    const programme = planProgramme(job, wallsOf(job));
    expect(programmeSheet(job, programme, measure).pages).toEqual([]);
    expect(programmeSvg(job, programme, measure)).toBeNull();
  });
});

describe('the dates as CSV, read back by papaparse', () => {
  const rowsOf = ([job, programme]: readonly [Job, Programme]) =>
    Papa.parse<Record<string, string>>(programmeCsv(job, programme), { header: true, skipEmptyLines: true })
      .data;

  it('have a row for every visit, task, event and wait', () => {
    const [job, programme] = small({ start: '2026-03-02', acclimatise: 0 });
    const rows = rowsOf([job, programme]);
    const count = (entry: string) => rows.filter((row) => row.entry === entry).length;
    expect(count('task') + count('event')).toBe(programme.tasks.length);
    expect(count('wait')).toBe(programme.waits.length);
    expect(count('visit')).toBe(programme.visits.length);
    expect(rows.find(({ name }) => name === 'Demask')).toMatchObject({
      wall: 'A',
      wall_name: 'Proofing wall',
      zone: 'Z1',
      begins: '2026-03-03 14:50',
      ends: '2026-03-03 15:15',
      working_hours: '0.42',
    });
  });

  it('count days where the job names none', () => {
    const rows = rowsOf(small(undefined));
    expect(rows.find(({ name }) => name === 'Protect and mask')!.begins).toBe('day 1 08:00');
    expect(rows.find(({ name }) => name === 'Order materials')!.ends).toBe('13 days before');
  });
});
