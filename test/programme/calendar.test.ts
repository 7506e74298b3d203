import { describe, expect, it } from 'vitest';
import { dayNumber, isoDay, timeOfDay, weekdayOf } from '../../core/job/day';
import {
  endOfWork,
  isWorkingDay,
  lastDayOf,
  roundTheClock,
  startOfWork,
  workBefore,
  workCalendar,
} from '../../core/programme/calendar';
import { at, fiveDays, moment } from './moments';

describe('days and times', () => {
  it('count from 1970-01-01, a Thursday, over leap days and back (common knowledge, no source)', () => {
    expect(dayNumber('1970-01-01')).toBe(0);
    expect(weekdayOf(0)).toBe(4);
    expect(dayNumber('2024-02-29')! + 1).toBe(dayNumber('2024-03-01'));
    expect(isoDay(dayNumber('1999-12-31')! + 1)).toBe('2000-01-01');
    expect(weekdayOf(dayNumber('2026-03-02')!)).toBe(1);
    expect(weekdayOf(-5)).toBe(6);
  });

  it.each(['2026-02-29', '2026-13-01', '2026-00-10', '02.03.2026', '2026-3-2', ''])('refuse %s', (text) => {
    expect(dayNumber(text)).toBeNull();
  });

  it('read times of day, 24:00 as the end of a day', () => {
    expect(timeOfDay('08:30')).toBe(510);
    expect(timeOfDay('24:00')).toBe(1440);
    for (const text of ['24:01', '08:60', '8:30', 'noon']) expect(timeOfDay(text)).toBeNull();
  });
});

describe('working minutes', () => {
  it('rest over the break at midday: a day from eight to five has eight hours', () => {
    const start = workBefore(fiveDays, at('2026-03-02 08:00'));
    const worked = (text: string) => workBefore(fiveDays, at(text)) - start;
    expect(fiveDays.dayWork).toBe(480);
    expect(worked('2026-03-02 12:00')).toBe(240);
    expect(worked('2026-03-02 12:40')).toBe(240);
    expect(worked('2026-03-02 13:00')).toBe(240);
    expect(worked('2026-03-02 17:00')).toBe(480);
    expect(worked('2026-03-03 07:00')).toBe(480);
    expect(worked('2026-03-09 08:00')).toBe(2400);
  });

  it('begin again where the next working minute is and end where the last one was', () => {
    const place = workBefore(fiveDays, at('2026-03-06 17:00'));
    expect(workBefore(fiveDays, at('2026-03-09 08:00'))).toBe(place);
    expect(moment(endOfWork(fiveDays, place))).toBe('2026-03-06 17:00');
    expect(moment(startOfWork(fiveDays, place))).toBe('2026-03-09 08:00');
  });

  it('pass holidays, also two in a row after a weekend', () => {
    const holidays = ['2026-04-03', '2026-04-06', '2026-04-07', '2026-04-05'].map((day) => dayNumber(day)!);
    const calendar = workCalendar({ from: 480, to: 960, weekdays: [1, 2, 3, 4, 5], holidays });
    const place = workBefore(calendar, at('2026-04-02 16:00'));
    expect(moment(startOfWork(calendar, place))).toBe('2026-04-08 08:00');
    expect(moment(endOfWork(calendar, place + 1))).toBe('2026-04-08 08:01');
    expect(isWorkingDay(calendar, dayNumber('2026-04-06')!)).toBe(false);
    expect(isWorkingDay(calendar, dayNumber('2026-04-08')!)).toBe(true);
  });

  it('run over midnight in a night shift, which belongs to the day on which it begins', () => {
    const nights = workCalendar({ from: 20 * 60, to: 28 * 60, weekdays: [5] });
    const start = workBefore(nights, at('2026-03-06 20:00'));
    expect(workBefore(nights, at('2026-03-07 01:00')) - start).toBe(300);
    expect(workBefore(nights, at('2026-03-07 09:00')) - start).toBe(480);
    expect(moment(endOfWork(nights, start + 480))).toBe('2026-03-07 04:00');
    expect(moment(startOfWork(nights, start + 480))).toBe('2026-03-13 20:00');
  });

  it('never rest round the clock', () => {
    for (const minute of [-3000, 0, 1439, 1440, 29_000_000]) {
      const place = workBefore(roundTheClock, minute);
      expect(startOfWork(roundTheClock, place)).toBe(minute);
      expect(endOfWork(roundTheClock, place)).toBe(minute);
    }
  });

  it('are none where nobody works', () => {
    expect(() => workCalendar({ from: 480, to: 540, pause: 60, weekdays: [1] })).toThrow('no working time');
    expect(() => workCalendar({ from: 480, to: 540, weekdays: [] })).toThrow('no working time');
  });
});

describe('the day that something ends on', () => {
  it('is Monday for what is done on Monday (open CPM tutorial: a day of work on Monday ends on Monday)', () => {
    const start = at('2026-03-02 08:00');
    const end = endOfWork(fiveDays, workBefore(fiveDays, start) + fiveDays.dayWork);
    expect(moment(end)).toBe('2026-03-02 17:00');
    expect(isoDay(lastDayOf(end))).toBe('2026-03-02');
    expect(isoDay(lastDayOf(at('2026-03-03 00:00')))).toBe('2026-03-02');
  });
});

describe('two days of waiting from Friday 17:00 (worked by hand)', () => {
  const friday = at('2026-03-06 17:00');

  it('end on Wednesday morning where working days count', () => {
    const place = workBefore(fiveDays, friday) + 2 * fiveDays.dayWork;
    expect(moment(startOfWork(fiveDays, place))).toBe('2026-03-11 08:00');
  });

  it('end on Sunday 17:00 where hours count, and work goes on on Monday 08:00', () => {
    const dry = friday + 48 * 60;
    expect(moment(dry)).toBe('2026-03-08 17:00');
    expect(moment(startOfWork(fiveDays, workBefore(fiveDays, dry)))).toBe('2026-03-09 08:00');
  });
});
