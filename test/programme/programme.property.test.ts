import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isoDay, dayNumber } from '../../core/job/day';
import { shiftOf } from '../../core/job/check-programme';
import { readJobObject } from '../../core/job/read';
import type { Job } from '../../core/job/schema';
import type { CalendarDays } from '../../core/programme/calendar';
import { planProgramme, type Programme } from '../../core/programme/programme';
import { worksAt } from './naive-calendar';
import { jobOf, productOf, wallsOf } from './small-zone';

const monday = dayNumber('2026-03-02')!;
const two = (value: number) => String(value).padStart(2, '0');

const settings = fc.record(
  {
    start: fc.integer({ min: 0, max: 400 }).map((day) => isoDay(monday + day)),
    crew: fc.integer({ min: 1, max: 6 }),
    hours: fc
      .tuple(fc.integer({ min: 0, max: 23 }), fc.integer({ min: 2, max: 23 }))
      .map(([from, length]) => ({
        from: `${two(from)}:00`,
        to: `${two((from + length) % 24)}:30`,
        break: 30,
      })),
    weekdays: fc.subarray([1, 2, 3, 4, 5, 6, 7], { minLength: 1 }),
    holidays: fc.array(
      fc.integer({ min: 0, max: 430 }).map((day) => isoDay(monday + day)),
      { maxLength: 20 },
    ),
    acclimatise: fc.integer({ min: 0, max: 72 }),
    leadTime: fc.integer({ min: 0, max: 30 }),
    climate: fc.record({
      temperature: fc.integer({ min: 0, max: 30 }),
      humidity: fc.integer({ min: 20, max: 95 }),
    }),
    visitGap: fc.integer({ min: 0, max: 40 }),
  },
  { requiredKeys: ['start', 'hours', 'weekdays'] },
);

const finish = fc
  .record({
    coats: fc.integer({ min: 1, max: 4 }),
    recoatLeast: fc.integer({ min: 0, max: 30 }),
    more: fc.option(fc.integer({ min: 0, max: 100 })),
    cure: fc.integer({ min: 0, max: 200 }),
    pace: fc.integer({ min: 1, max: 40 }),
  })
  .map(({ more, ...fields }) =>
    productOf({
      ...fields,
      id: 'finish',
      layer: 'writable',
      ...(more !== null && { recoatMost: fields.recoatLeast + more }),
    }),
  );

const plans = fc
  .tuple(settings, finish, fc.integer({ min: 1, max: 5 }))
  .map(([programme, product, zones]): [Job, Programme] => {
    const layers = [{ kind: 'primer' }, { kind: 'writable', product: 'finish' }];
    const job = jobOf(programme, { products: [product], layers, zones });
    return [job, planProgramme(job, wallsOf(job))];
  });

function daysOf({ programme }: Job): CalendarDays {
  const { hours, weekdays, holidays = [] } = programme!;
  return {
    ...shiftOf(hours),
    pause: hours!.break!,
    weekdays: weekdays!,
    holidays: holidays.map((day) => dayNumber(day)!),
  };
}

describe('whatever a job says of crew, hours, holidays and products', () => {
  it('its programme works in working hours, not before the first day, and for as long as it says', () => {
    fc.assert(
      fc.property(plans, ([job, { tasks }]) => {
        expect(readJobObject(job).findings).toEqual([]);
        const days = daysOf(job);
        for (const { start, finish: end, work } of tasks.filter((task) => task.work > 0)) {
          expect(start).toBeGreaterThanOrEqual(dayNumber(job.programme!.start!)! * 1440);
          expect(worksAt(days, start) && worksAt(days, end - 1)).toBe(true);
          if (end - start > 30_000) continue;
          let worked = 0;
          for (let minute = start; minute < end; minute++) worked += Number(worksAt(days, minute));
          expect(worked).toBe(work);
        }
      }),
      { numRuns: 100, seed: 51 },
    );
  });

  it('waits for every coat to dry, or says which comes too late', () => {
    fc.assert(
      fc.property(plans, ([job, { tasks, waits, findings }]) => {
        for (const { before, after, start, finish: dry } of waits) {
          expect(start).toBe(tasks[after]!.finish);
          expect(tasks[before]!.start).toBeGreaterThanOrEqual(dry);
        }
        const most = job.products![0]!.recoatMost ?? Infinity;
        const late = waits.filter(
          ({ kind, after, before }) =>
            kind === 'dry' &&
            tasks[after]!.kind === 'coat' &&
            tasks[before]!.kind === 'coat' &&
            tasks[before]!.start - tasks[after]!.finish > most * 60,
        );
        expect(findings.filter(({ code }) => code === 'recoat-too-late')).toHaveLength(late.length);
      }),
      { numRuns: 150, seed: 52 },
    );
  });

  it('has every day of work in one visit, and visits apart from one another in their order', () => {
    fc.assert(
      fc.property(plans, ([, { tasks, visits }]) => {
        expect(visits.flatMap((visit) => visit.tasks).sort((a, b) => a - b)).toEqual(
          tasks.flatMap(({ work }, i) => (work > 0 ? [i] : [])),
        );
        visits.forEach(({ first, last, tasks: done }, i) => {
          for (const task of done) {
            expect(Math.floor(tasks[task]!.start / 1440)).toBeGreaterThanOrEqual(first);
            expect(Math.ceil(tasks[task]!.finish / 1440) - 1).toBeLessThanOrEqual(last);
          }
          if (i > 0) expect(first).toBeGreaterThanOrEqual(visits[i - 1]!.last);
        });
      }),
      { numRuns: 100, seed: 53 },
    );
  });

  it('moves by whole weeks with its first day and its holidays', () => {
    const week = (day: string, weeks: number) => isoDay(dayNumber(day)! + 7 * weeks);
    fc.assert(
      fc.property(plans, fc.integer({ min: -200, max: 200 }), ([job, { tasks }], weeks) => {
        const { start, holidays, ...rest } = job.programme!;
        const programme = {
          ...rest,
          start: week(start!, weeks),
          holidays: holidays?.map((day) => week(day, weeks)),
        };
        const moved = planProgramme({ ...job, programme } as Job, wallsOf(job)).tasks;
        expect(moved.map((task) => task.start - weeks * 7 * 1440)).toEqual(tasks.map((task) => task.start));
      }),
      { numRuns: 60, seed: 54 },
    );
  });

  it('is handed over when all is ready, with something critical from its first task on', () => {
    fc.assert(
      fc.property(plans, ([, { tasks, ready, handover }]) => {
        expect(handover).toBe(Math.max(...tasks.map((task) => task.finish)));
        expect(handover).toBeGreaterThanOrEqual(ready.writing!);
        expect(ready.magnets).toBeNull();
        expect(tasks.find(({ kind }) => kind === 'handover')!.critical).toBe(true);
        expect(tasks.every(({ totalFloat, freeFloat }) => freeFloat >= 0 && totalFloat >= freeFloat)).toBe(
          true,
        );
      }),
      { numRuns: 100, seed: 55 },
    );
  });
});
