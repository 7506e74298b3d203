import { workBefore, type Minute } from './calendar';
import {
  dueBefore,
  indexNetwork,
  readyAfter,
  type IndexedNetwork,
  type Network,
  type NetworkLink,
} from './network';
import { earliestPass, latestPass, type Pass } from './passes';
import { lastFinish, placeFrom, placeUntil, type Dates, type Placement } from './placement';

/** Where a task lies and how far it can move; floats in working minutes of its calendar. */
export interface Timing extends Placement {
  readonly latestStart: Minute;
  readonly latestFinish: Minute;
  /** How far it can move without moving the end of all. */
  readonly totalFloat: number;
  /** How far it can move without moving anything else. */
  readonly freeFloat: number;
  /** On a chain of tasks each of which decides when the next begins, up to the end of all. */
  readonly critical: boolean;
}

export interface Schedule {
  readonly timings: readonly Timing[];
  readonly end: Minute;
  /** Greatest waits that could not be kept. */
  readonly missed: ReadonlySet<NetworkLink>;
}

/**
 * Earliest and latest dates, floats and the critical path of a network, without regard to who does the work. Where all tasks
 * go round the clock, critical are just those without total float; with working calendars a task before a night or a
 * weekend may have some float and still decide when the next begins.
 *
 * Source: the usual definitions: total float = latest − earliest start, free float = least earliest start of what follows −
 * lag − earliest finish.
 * @throws Error if links run in a ring
 */
export function criticalPath(network: Network): Schedule {
  const indexed = indexNetwork(network);
  return timed(indexed, earliestPass(indexed));
}

/** Floats and critical path about a pass that is feasible. */
export function timed(network: IndexedNetwork, { dates, missed }: Pass): Schedule {
  const end = lastFinish(dates, network.begin);
  const latest = latestPass(network, end, missed);
  const critical = criticalTasks(network, dates, missed, end);
  const timings = network.tasks.map((_, task): Timing => {
    const start = dates.starts[task]!;
    const latestStart = latest.starts[task]!;
    const totalFloat = slack(network, task, start, latestStart);
    return {
      start,
      finish: dates.finishes[task]!,
      latestStart,
      latestFinish: latest.finishes[task]!,
      totalFloat,
      freeFloat: totalFloat === 0 ? 0 : freeFloat(network, task, dates, end, missed),
      critical: critical.has(task),
    };
  });
  return { timings, end, missed };
}

function slack({ tasks }: Network, task: number, start: Minute, latestStart: Minute): number {
  const { calendar } = tasks[task]!;
  return workBefore(calendar, latestStart) - workBefore(calendar, start);
}

function freeFloat(
  network: IndexedNetwork,
  task: number,
  { starts, finishes }: Dates,
  end: Minute,
  missed: ReadonlySet<NetworkLink>,
): number {
  let due = end;
  for (const link of network.outOf[task]!) {
    due = Math.min(due, dueBefore(link, starts[link.to]!, network));
  }
  let { start } = placeUntil(network.tasks[task]!, due);
  for (const link of network.into[task]!) {
    if (link.most !== undefined && !missed.has(link)) {
      start = Math.min(start, finishes[link.from]! + link.most);
    }
  }
  return Math.max(0, slack(network, task, starts[task]!, start));
}

function criticalTasks(
  network: IndexedNetwork,
  { starts, finishes }: Dates,
  missed: ReadonlySet<NetworkLink>,
  end: Minute,
): Set<number> {
  const { tasks, into, outOf, begin } = network;
  const critical = new Set<number>();
  const waiting = [...tasks.keys()].filter((task) => finishes[task] === end);
  for (let task = waiting.pop(); task !== undefined; task = waiting.pop()) {
    if (critical.has(task)) continue;
    critical.add(task);
    const start = starts[task]!;
    const decides = (ready: Minute) => placeFrom(tasks[task!]!, ready).start === start;
    const deciding = into[task]!.filter((link) => decides(readyAfter(link, finishes[link.from]!, network)));
    waiting.push(...deciding.map(({ from }) => from));
    if (deciding.length > 0 || decides(Math.max(begin, tasks[task]!.notBefore ?? begin))) continue;
    // Nothing before it holds it up: it waits so that what follows within a greatest wait is not late.
    const awaited = outOf[task]!.filter((link) => link.most !== undefined && !missed.has(link));
    waiting.push(...awaited.map(({ to }) => to));
  }
  return critical;
}
