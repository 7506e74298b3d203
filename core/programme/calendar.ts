import { weekdayOf } from '../job/day';

/**
 * Working calendars on whole minutes of local time, counted from 1970-01-01 00:00 without a time zone: no clock is put
 * forward or back here. A moment has a place among the working minutes too, which stands still while nobody works; so
 * Friday 17:00 and Monday 08:00 are the same place, and the two ways back say which of them is meant.
 */

/** Minutes from 1970-01-01 00:00, local, whole. */
export type Minute = number;
/** Working minutes of a calendar, from a beginning of its own; every working day begins at a multiple of `dayWork`. */
export type WorkPlace = number;

export const dayMinutes = 1440;
export const hour = 60;

export interface WorkCalendar {
  /** Of a working day, minutes from its midnight, in order; the last may run into the next day. */
  readonly spans: readonly { readonly from: number; readonly to: number }[];
  readonly dayWork: number;
  /** Working days of the week before Monday, Tuesday … and of the whole week. */
  readonly daysBefore: readonly number[];
  /** Holidays that would be working days, in order. */
  readonly holidays: readonly number[];
}

export interface CalendarDays {
  /** Minutes from midnight; `to` beyond 1440 is on the next day, less than a day after `from`. */
  readonly from: number;
  readonly to: number;
  /** Minutes, about the middle of the day. */
  readonly pause?: number;
  /** 1 Monday to 7 Sunday. */
  readonly weekdays: readonly number[];
  /** Day numbers. */
  readonly holidays?: readonly number[];
}

/** @throws Error if no time is left to work: `readJob` lets no such hours through */
export function workCalendar({ from, to, pause = 0, weekdays, holidays = [] }: CalendarDays): WorkCalendar {
  const dayWork = to - from - pause;
  const works = [1, 2, 3, 4, 5, 6, 7].map((day) => weekdays.includes(day));
  if (!(dayWork > 0) || to - from > dayMinutes || !works.includes(true)) {
    throw new Error(`no working time: ${from} to ${to}, pause ${pause}, weekdays ${weekdays.join()}`);
  }
  // A pause of an hour in a day from eight to five is from twelve to one.
  const pauseFrom = Math.floor((from + to - pause) / 2 / 15) * 15;
  const beforePause = Math.max(from, pauseFrom);
  const spans =
    pause > 0
      ? [
          { from, to: beforePause },
          { from: beforePause + pause, to },
        ].filter((span) => span.to > span.from)
      : [{ from, to }];
  let before = 0;
  const daysBefore = [0, ...works.map((work) => (before += Number(work)))];
  return {
    spans,
    dayWork,
    daysBefore,
    holidays: [...new Set(holidays)].filter((day) => works[weekdayOf(day) - 1]).sort((a, b) => a - b),
  };
}

/** Every minute of every day: how drying and curing go. */
export const roundTheClock = workCalendar({ from: 0, to: dayMinutes, weekdays: [1, 2, 3, 4, 5, 6, 7] });

/** How many working minutes lie before a moment. */
export function workBefore(calendar: WorkCalendar, minute: Minute): WorkPlace {
  const day = Math.floor(minute / dayMinutes);
  const inDay = minute - day * dayMinutes;
  // Only a night shift of the day before can reach into this day.
  const reaches = calendar.spans.at(-1)!.to > dayMinutes;
  const today = workDaysBefore(calendar, day) * calendar.dayWork + workedOn(calendar, day, inDay);
  return reaches ? today - leftOf(calendar, day - 1, inDay + dayMinutes) : today;
}

/** The moment at which the next working minute after so many begins: the latest moment of that place. */
export function startOfWork(calendar: WorkCalendar, place: WorkPlace): Minute {
  const days = Math.floor(place / calendar.dayWork);
  let left = place - days * calendar.dayWork;
  const midnight = workDay(calendar, days) * dayMinutes;
  for (const { from, to } of calendar.spans) {
    if (left < to - from) return midnight + from + left;
    left -= to - from;
  }
  throw new Error(`no working minute ${place}`);
}

/** The moment at which so many working minutes are over: the earliest moment of that place. */
export function endOfWork(calendar: WorkCalendar, place: WorkPlace): Minute {
  const days = Math.ceil(place / calendar.dayWork) - 1;
  let left = place - days * calendar.dayWork;
  const midnight = workDay(calendar, days) * dayMinutes;
  for (const { from, to } of calendar.spans) {
    if (left <= to - from) return midnight + from + left;
    left -= to - from;
  }
  throw new Error(`no working minute ${place}`);
}

/** Whether a day number is worked on. */
export function isWorkingDay(calendar: WorkCalendar, day: number): boolean {
  return workDaysBefore(calendar, day + 1) > workDaysBefore(calendar, day);
}

/** The day that a moment lies in; one that ends something at midnight lies in the day before. */
export function lastDayOf(end: Minute): number {
  return Math.ceil(end / dayMinutes) - 1;
}

export function dayOf(start: Minute): number {
  return Math.floor(start / dayMinutes);
}

/** Weeks count from the Monday before 1970. */
function workDaysBefore({ daysBefore, holidays }: WorkCalendar, day: number): number {
  const weeks = Math.floor((day + 3) / 7);
  return weeks * daysBefore[7]! + daysBefore[day + 3 - weeks * 7]! - countBelow(holidays, day);
}

function workedOn(calendar: WorkCalendar, day: number, minutes: number): number {
  if (!isWorkingDay(calendar, day)) return 0;
  let worked = 0;
  for (const { from, to } of calendar.spans) {
    if (minutes <= from) break;
    worked += Math.min(minutes, to) - from;
  }
  return worked;
}

function leftOf(calendar: WorkCalendar, day: number, minutes: number): number {
  return isWorkingDay(calendar, day) ? calendar.dayWork - workedOn(calendar, day, minutes) : 0;
}

/** The day that has so many working days before it and is one itself. */
function workDay({ daysBefore, holidays }: WorkCalendar, count: number): number {
  const perWeek = daysBefore[7]!;
  const inWeeks = (days: number) => {
    const weeks = Math.floor(days / perWeek);
    const rest = days - weeks * perWeek;
    let weekday = 0;
    while (daysBefore[weekday + 1]! <= rest) weekday++;
    return weeks * 7 + weekday - 3;
  };
  // Each holiday passed pushes the day on by one, perhaps past another holiday.
  let day = inWeeks(count);
  for (let passed = 0; ;) {
    const now = countBelow(holidays, day + 1);
    if (now === passed) return day;
    passed = now;
    day = inWeeks(count + passed);
  }
}

/** How many of an ordered list are smaller. */
function countBelow(ordered: readonly number[], value: number): number {
  let low = 0;
  let high = ordered.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ordered[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
