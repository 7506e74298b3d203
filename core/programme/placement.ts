import { endOfWork, startOfWork, workBefore, type Minute, type WorkPlace } from './calendar';
import type { NetworkTask } from './network';

/** When a task is done. */
export interface Placement {
  readonly start: Minute;
  readonly finish: Minute;
}

/** Of every task of a network by its number; NaN while it has none. */
export interface Dates {
  readonly starts: Float64Array;
  readonly finishes: Float64Array;
}

export function noDates(tasks: number): Dates {
  return { starts: new Float64Array(tasks).fill(NaN), finishes: new Float64Array(tasks).fill(NaN) };
}

export function setDates({ starts, finishes }: Dates, task: number, { start, finish }: Placement): void {
  starts[task] = start;
  finishes[task] = finish;
}

/** When the last of all ends; `begin` if there is none. */
export function lastFinish({ finishes }: Dates, begin: Minute): Minute {
  return finishes.reduce((last, finish) => Math.max(last, finish), begin);
}

/** The earliest place at or after `place` among the working minutes where a task may begin. */
export function earliestPlace({ calendar, work, unbroken }: NetworkTask, place: WorkPlace): WorkPlace {
  if (!unbroken) return place;
  const { dayWork } = calendar;
  const day = Math.floor(place / dayWork) * dayWork;
  const fits = work <= dayWork ? place + work <= day + dayWork : place === day;
  return fits ? place : day + dayWork;
}

/** The latest place at or before `place` where a task may begin. */
export function latestPlace({ calendar, work, unbroken }: NetworkTask, place: WorkPlace): WorkPlace {
  if (!unbroken) return place;
  const { dayWork } = calendar;
  const day = Math.floor(place / dayWork) * dayWork;
  return work <= dayWork ? Math.min(place, day + dayWork - work) : day;
}

export function placementAt({ calendar, work }: NetworkTask, place: WorkPlace): Placement {
  return { start: startOfWork(calendar, place), finish: endOfWork(calendar, place + work) };
}

/** As early as can be from a moment on. */
export function placeFrom(task: NetworkTask, ready: Minute): Placement {
  if (task.work === 0) return { start: ready, finish: ready };
  return placementAt(task, earliestPlace(task, workBefore(task.calendar, ready)));
}

/** As late as can be to be done by a moment. */
export function placeUntil(task: NetworkTask, due: Minute): Placement {
  if (task.work === 0) return { start: due, finish: due };
  return placementAt(task, latestPlace(task, workBefore(task.calendar, due) - task.work));
}

/** As late as can be to begin by a moment. */
export function placeBegunBy(task: NetworkTask, begun: Minute): Placement {
  if (task.work === 0) return { start: begun, finish: begun };
  const place = workBefore(task.calendar, begun);
  const rests = startOfWork(task.calendar, place) > begun;
  return placementAt(task, latestPlace(task, rests ? place - 1 : place));
}

/** The earliest that is not done before a moment: what follows soon after it may have to wait until then. */
export function placeEndingFrom(task: NetworkTask, least: Minute): Placement {
  const before = placeUntil(task, least);
  return before.finish === least ? before : placeFrom(task, before.start + 1);
}
