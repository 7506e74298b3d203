import type { Finding } from '../finding';
import { dayNumber, timeOfDay } from './day';
import { refusal, shown, type Path } from './place';
import type { Job } from './schema';

/** Days of the programme exist, times of day too, and hours and break leave some time to work. */
export function checkProgramme(job: Job): Finding[] {
  const { start, ordered, holidays = [], hours, weekdays, weekends } = job.programme ?? {};
  const wrong = (path: Path, code: string, says: string) => refusal(job, ['programme', ...path], code, says);
  const checkDay = (path: Path, text: string | undefined): Finding[] =>
    text === undefined || dayNumber(text) !== null
      ? []
      : [
          wrong(
            path,
            'no-such-day',
            `is ${shown(text)}, a day that no calendar has; give a day such as "2026-03-02".`,
          ),
        ];
  const checkTime = (path: Path, text: string | undefined): Finding[] =>
    text === undefined || timeOfDay(text) !== null
      ? []
      : [wrong(path, 'no-such-time', `is ${shown(text)}; give a time of day from "00:00" to "24:00".`)];

  const faults = [
    ...checkDay(['start'], start),
    ...checkDay(['ordered'], ordered),
    ...holidays.flatMap((day, i) => checkDay(['holidays', i], day)),
    ...checkTime(['hours', 'from'], hours?.from),
    ...checkTime(['hours', 'to'], hours?.to),
  ];
  if (weekdays?.length === 0 && !weekends) {
    faults.push(
      wrong(
        ['weekdays'],
        'no-working-time',
        'is empty; give at least one working day, 1 for Monday to 7 for Sunday.',
      ),
    );
  }
  if (faults.length > 0 || !hours) return faults;

  const { from, to } = shiftOf(hours);
  if (hours.from !== undefined && hours.from === hours.to) {
    return [
      wrong(
        ['hours', 'to'],
        'no-working-time',
        `is ${shown(hours.to)}, when the day begins; give the time at which it ends.`,
      ),
    ];
  }
  return (hours.break ?? 0) < to - from
    ? []
    : [
        wrong(
          ['hours', 'break'],
          'no-working-time',
          `is ${hours.break} minutes, as long as the working day; give a shorter one.`,
        ),
      ];
}

/** Usual hours of a working day (common practice, no source); the break in minutes. */
export const usualHours = { from: '08:00', to: '17:00', break: 60 } as const;

/** Minutes from midnight; an end on the next day lies beyond 1440. */
export function shiftOf(hours: { readonly from?: string; readonly to?: string } = {}): {
  from: number;
  to: number;
} {
  const from = timeOfDay(hours.from ?? usualHours.from)!;
  const to = timeOfDay(hours.to ?? usualHours.to)!;
  return { from, to: to > from ? to : to + 1440 };
}
