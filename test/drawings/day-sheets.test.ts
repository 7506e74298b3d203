import { describe, expect, it } from 'vitest';
import { mixesOf, workDays } from '../../core/drawings/day-plan';
import { daySheets } from '../../core/drawings/day-sheets';
import { measureWith } from '../../core/drawings/fonts';
import { writePdf } from '../../core/drawings/pdf';
import { demoJob } from '../../core/job/demo';
import type { Job } from '../../core/job/schema';
import { priceJob } from '../../core/offer/price-job';
import { workBefore } from '../../core/programme/calendar';
import { workOutFully } from '../../core/run/pipeline';
import { fontFiles } from './font-files';
import { oddWalls } from './odd-walls';
import { textFaults, textsOf, wordsOf } from './page-checks';
import { workedJobs } from './worked-jobs';

const measure = measureWith(fontFiles);
const jobs = [...workedJobs, ['odd walls', oddWalls] as const].map(
  ([name, worked]) => [name, worked, priceJob(worked)] as const,
);
const sheetsOf = (job: Job) => {
  const worked = workOutFully(job, { steps: 1 });
  const { programme, takeOff } = priceJob(worked);
  return { programme, sheets: daySheets(worked, programme, takeOff, measure) };
};

describe.each(jobs)('day sheets of the job %s', (_, worked, { programme, takeOff }) => {
  const sheets = daySheets(worked, programme, takeOff, measure);
  const days = workDays(programme);

  it('lay no text on another and none out of the frame', () => {
    expect(textFaults(sheets, measure, true)).toEqual([]);
  });

  it('have all the work of the programme, each minute on its day', () => {
    const { calendar } = programme.settings;
    const minutes = (from: number, to: number) => workBefore(calendar, to) - workBefore(calendar, from);
    for (const task of programme.tasks.filter(({ work }) => work > 0)) {
      const steps = days.flatMap((day) => day.steps.filter((step) => step.task === task));
      expect(steps.reduce((sum, { start, finish }) => sum + minutes(start, finish), 0)).toBe(
        minutes(task.start, task.finish),
      );
    }
  });

  it('begin a page for every day on which something is done, with a step in its order', () => {
    const titles = new Set(sheets.pages.map((page) => textsOf(page).find((text) => /^Day \d+/.test(text))));
    expect(titles.size).toBe(days.length);
    for (const { steps } of days) {
      expect(steps.map(({ start }) => start)).toEqual(steps.map(({ start }) => start).sort((a, b) => a - b));
    }
  });

  it('say of every day what is wet while anybody works or after, and until when', () => {
    for (const { day, steps, waits } of days) {
      const expected = programme.waits.filter(
        ({ start, finish }) => start < (day + 1) * 1440 && finish > steps[0]!.start,
      );
      expect(waits).toHaveLength(expected.length);
    }
  });
});

describe('day sheets', () => {
  it('are one page a day on the demo, of two columns where an upright page is too small', () => {
    const { sheets, programme } = sheetsOf(demoJob());
    expect(sheets.pages.length).toBe(workDays(programme).length);
    expect(new Set(sheets.pages.map(({ format }) => format))).toContain('A3');
  });

  it('name the day of the calendar where the job has one, else count', () => {
    const job = demoJob();
    const dated = sheetsOf({ ...job, programme: { ...job.programme, start: '2026-03-02' } }).sheets;
    expect(wordsOf(dated)).toContain('Day 1: Monday 2026-03-02');
    const { start: _, ordered: __, holidays: ___, ...rest } = job.programme ?? {};
    const counted = wordsOf(sheetsOf({ ...job, programme: rest }).sheets);
    expect(counted).toMatch(/^Day 1$/m);
    expect(counted).not.toMatch(/1970/);
  });

  it('mix on the days together what the mixing plan has, and on none more than is laid', () => {
    const worked = workOutFully(demoJob(), { steps: 1 });
    const { programme, takeOff } = priceJob(worked);
    const sum = (amounts: readonly number[]) => amounts.reduce((all, amount) => all + amount, 0);
    const planned = sum(takeOff.mixing.flatMap(({ mixes }) => mixes.map(({ amount }) => amount)));
    const tasks = programme.tasks.map((task) => mixesOf(task, worked.job, takeOff));
    expect(planned).toBeGreaterThan(0);
    expect(sum(tasks.flat().map(({ amount }) => amount))).toBeCloseTo(planned, 6);
    // The demo's stair wall shares a mix over two zones that are bonded on different days.
    expect(tasks.flat().some(({ isPart }) => isPart)).toBe(true);
    expect(wordsOf(daySheets(worked, programme, takeOff, measure))).toContain('part of 1');
  });

  it('show a caution on the days it is for, and not on others', () => {
    const worked = workOutFully(demoJob(), { steps: 1 });
    const { programme, takeOff } = priceJob(worked);
    const drawn = daySheets(worked, programme, takeOff, measure);
    for (const { steps, number } of workDays(programme)) {
      const page = drawn.pages.find((one) =>
        textsOf(one).some((text) => new RegExp(`^Day ${number}\\b`).test(text)),
      )!;
      const sands = steps.some(({ task }) => task.kind === 'sand' || task.kind === 'key');
      expect(textsOf(page).join(' ').includes('Sanding makes dust')).toBe(sands);
    }
  });

  it('keep apart the texts of a job whose names are far too long', () => {
    const job = demoJob();
    const name = 'A very long name of a wall in a very long corridor '.repeat(3);
    const long = sheetsOf({
      ...job,
      name,
      walls: job.walls.map((wall) => ({
        ...wall,
        name,
        zones: wall.zones.map((zone) => ({ ...zone, name })),
      })),
    });
    expect(textFaults(long.sheets, measure, true)).toEqual([]);
  });

  it('are the same bytes from the same job', async () => {
    const bytes = () => writePdf(sheetsOf(demoJob()).sheets, fontFiles, { date: new Date(0) });
    expect(await bytes()).toEqual(await bytes());
  });
});
