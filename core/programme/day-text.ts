import { isoDay } from '../job/day';
import { dayMinutes, dayOf, lastDayOf, type Minute } from './calendar';
import type { Settings } from './settings';

/** `2026-03-02`, or `day 3` and `12 days before` where the job names no day. */
export function dayText(day: number, { dayOne }: Pick<Settings, 'dayOne'>): string {
  if (dayOne === null) return isoDay(day);
  if (day >= dayOne) return `day ${day - dayOne + 1}`;
  return dayOne - day === 1 ? '1 day before' : `${dayOne - day} days before`;
}

/** The day and time at which something begins: `2026-03-02 08:00`. */
export function startText(minute: Minute, settings: Pick<Settings, 'dayOne'>): string {
  return `${dayText(dayOf(minute), settings)} ${timeText(minute - dayOf(minute) * dayMinutes)}`;
}

/** The day and time at which something ends; midnight is 24:00 of the day before. */
export function endText(minute: Minute, settings: Pick<Settings, 'dayOne'>): string {
  const day = lastDayOf(minute);
  return `${dayText(day, settings)} ${timeText(minute - day * dayMinutes)}`;
}

function timeText(minutes: number): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}
