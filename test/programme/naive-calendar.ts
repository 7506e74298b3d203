import { weekdayOf } from '../../core/job/day';
import type { CalendarDays } from '../../core/programme/calendar';

/** Minute by minute, knowing nothing of places: whether somebody works in the minute that begins here. */
export function worksAt(
  { from, to, pause = 0, weekdays, holidays = [] }: CalendarDays,
  minute: number,
): boolean {
  const pauseFrom = Math.max(from, Math.floor((from + to - pause) / 2 / 15) * 15);
  return [0, 1].some((back) => {
    const day = Math.floor(minute / 1440) - back;
    const inDay = minute - day * 1440;
    return (
      weekdays.includes(weekdayOf(day)) &&
      !holidays.includes(day) &&
      inDay >= from &&
      inDay < to &&
      !(inDay >= pauseFrom && inDay < pauseFrom + pause)
    );
  });
}
