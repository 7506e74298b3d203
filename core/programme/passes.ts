import type { Minute } from './calendar';
import { dueBefore, readyAfter, type IndexedNetwork, type NetworkLink } from './network';
import {
  noDates,
  placeBegunBy,
  placeEndingFrom,
  placeFrom,
  placeUntil,
  setDates,
  type Dates,
} from './placement';

/*
 * The two passes of the critical path method (J. E. Kelley, M. R. Walker, Critical-Path Planning and Scheduling, 1959),
 * with calendars. Greatest waits are kept by beginning the earlier task later, or the later one sooner, until none is
 * broken: moves go one way only, so that the first that keeps them all is the earliest, or the latest.
 */

export interface Pass {
  readonly dates: Dates;
  /** Greatest waits that no shifting keeps. */
  readonly missed: ReadonlySet<NetworkLink>;
}

/**
 * How often a greatest wait may move its task before it is given up: a move goes on to another working day at least, or to
 * another gap between tasks of the crew, and weeks are alike but for holidays.
 */
export const mostMoves = 100;

/** Every task as early as its links let it. */
export function earliestPass(network: IndexedNetwork): Pass {
  const missed = new Set<NetworkLink>();
  for (;;) {
    const tried = tryEarliest(
      network,
      network.links.filter((link) => link.most !== undefined && !missed.has(link)),
    );
    if ('dates' in tried) return { dates: tried.dates, missed };
    missed.add(tried.broken);
  }
}

/** Dates that keep these greatest waits, or the one that is moved and moved and still broken. */
function tryEarliest(
  network: IndexedNetwork,
  windows: readonly NetworkLink[],
): { dates: Dates } | { broken: NetworkLink } {
  const { tasks, order, into, begin } = network;
  const dates = noDates(tasks.length);
  const bounds = tasks.map(({ notBefore = begin }) => Math.max(notBefore, begin));
  const moves = new Map<NetworkLink, number>();
  for (;;) {
    for (const task of order) {
      let ready = bounds[task]!;
      for (const link of into[task]!) {
        ready = Math.max(ready, readyAfter(link, dates.finishes[link.from]!, network));
      }
      setDates(dates, task, placeFrom(tasks[task]!, ready));
    }
    const broken = windows.filter((link) => isLate(link, dates));
    if (broken.length === 0) return { dates };
    for (const link of broken) {
      const count = (moves.get(link) ?? 0) + 1;
      if (count > mostMoves || isImpossible(link)) return { broken: link };
      moves.set(link, count);
      const { start } = placeEndingFrom(tasks[link.from]!, dates.starts[link.to]! - link.most!);
      bounds[link.from] = Math.max(bounds[link.from]!, start);
    }
  }
}

/** Whether the later task of a greatest wait begins too late. */
export function isLate({ from, to, most }: NetworkLink, { starts, finishes }: Dates): boolean {
  return most !== undefined && starts[to]! > finishes[from]! + most;
}

/** A greatest wait shorter than the least one is kept by nothing. */
export function isImpossible({ lag = 0, lagRuns, most = Infinity }: NetworkLink): boolean {
  return lagRuns !== 'working' && most < lag;
}

/**
 * Every task as late as the end of all lets it.
 *
 * @param missed greatest waits that are not kept anyway
 */
export function latestPass(
  network: IndexedNetwork,
  end: Minute,
  missed: ReadonlySet<NetworkLink> = new Set(),
): Dates {
  const { tasks, order, outOf } = network;
  const dates = noDates(tasks.length);
  const { starts, finishes } = dates;
  const bounds = tasks.map(() => Infinity);
  const windows = network.links.filter((link) => link.most !== undefined && !missed.has(link));
  for (;;) {
    for (let i = order.length - 1; i >= 0; i--) {
      const task = order[i]!;
      let due = end;
      for (const link of outOf[task]!) {
        due = Math.min(due, dueBefore(link, starts[link.to]!, network));
      }
      const placement = placeUntil(tasks[task]!, due);
      const inTime = placement.start <= bounds[task]!;
      setDates(dates, task, inTime ? placement : placeBegunBy(tasks[task]!, bounds[task]!));
    }
    let moved = false;
    for (const { from, to, most } of windows) {
      const begun = finishes[from]! + most!;
      if (starts[to]! <= begun) continue;
      bounds[to] = Math.min(bounds[to]!, begun);
      moved = true;
    }
    if (!moved) return dates;
  }
}
