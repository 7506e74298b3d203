import { dayNumber, isoDay, timeOfDay } from '../../core/job/day';
import { workCalendar } from '../../core/programme/calendar';

/** Monday to Friday, 08:00 to 17:00, an hour of break: eight hours a day. */
export const fiveDays = workCalendar({ from: 480, to: 1020, pause: 60, weekdays: [1, 2, 3, 4, 5] });

/** @example at('2026-03-02 08:00') */
export function at(text: string): number {
  const [day, time] = text.split(' ');
  return dayNumber(day!)! * 1440 + timeOfDay(time!)!;
}

export function moment(minute: number): string {
  const day = Math.floor(minute / 1440);
  const inDay = minute - day * 1440;
  const two = (value: number) => String(value).padStart(2, '0');
  return `${isoDay(day)} ${two(Math.floor(inDay / 60))}:${two(inDay % 60)}`;
}
