import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { endOfWork, startOfWork, workBefore, workCalendar } from '../../core/programme/calendar';
import { calendarDays } from './random-calendar';
import { worksAt } from './naive-calendar';

const from = fc.integer({ min: -20_000, max: 20_000 });

describe('working minutes, counted one by one', () => {
  it('between two moments are as many as somebody works in', () => {
    fc.assert(
      fc.property(calendarDays, from, fc.integer({ min: 0, max: 15_000 }), (days, start, length) => {
        const calendar = workCalendar(days);
        let counted = 0;
        for (let minute = start; minute < start + length; minute++) counted += Number(worksAt(days, minute));
        expect(workBefore(calendar, start + length) - workBefore(calendar, start)).toBe(counted);
      }),
      { numRuns: 200, seed: 11 },
    );
  });

  it('begin at the next minute in which somebody works, and end after the last', () => {
    fc.assert(
      fc.property(calendarDays, from, (days, minute) => {
        const calendar = workCalendar(days);
        const place = workBefore(calendar, minute);
        let next = minute;
        while (!worksAt(days, next)) next++;
        let last = minute;
        while (!worksAt(days, last - 1)) last--;
        expect(startOfWork(calendar, place)).toBe(next);
        expect(endOfWork(calendar, place)).toBe(last);
      }),
      { numRuns: 200, seed: 12 },
    );
  });
});
