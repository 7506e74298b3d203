import { dayOf, isWorkingDay, lastDayOf, workBefore, type Minute, type WorkCalendar } from './calendar';

/** An unbroken run of working days on which the crew works. Day numbers, both worked on. */
export interface Visit {
  readonly first: number;
  readonly last: number;
  /** Numbers of the tasks, in the order of their beginnings. */
  readonly tasks: readonly number[];
}

/** Work of the crew. */
export interface CrewWork {
  readonly task: number;
  readonly start: Minute;
  readonly finish: Minute;
}

/**
 * Work grouped into visits. A working day without work ends a visit, and so does a wait longer than `gap`.
 *
 * @param work in the order of its beginnings, one after the other
 * @param gap working minutes
 */
export function visitsOf(work: readonly CrewWork[], calendar: WorkCalendar, gap: number): Visit[] {
  const visits: { first: number; last: number; tasks: number[] }[] = [];
  let before: CrewWork | undefined;
  for (const next of work) {
    const visit = visits.at(-1);
    const first = dayOf(next.start);
    const last = lastDayOf(next.finish);
    const waited = before ? workBefore(calendar, next.start) - workBefore(calendar, before.finish) : 0;
    if (visit && waited <= gap && !isIdleBetween(calendar, visit.last, first)) {
      visit.last = Math.max(visit.last, last);
      visit.tasks.push(next.task);
    } else visits.push({ first, last, tasks: [next.task] });
    before = next;
  }
  return visits;
}

function isIdleBetween(calendar: WorkCalendar, last: number, first: number): boolean {
  for (let day = last + 1; day < first; day++) if (isWorkingDay(calendar, day)) return true;
  return false;
}
