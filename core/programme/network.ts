import { endOfWork, startOfWork, workBefore, type Minute, type WorkCalendar } from './calendar';

/*
 * A network of tasks: activities are its nodes, finish-to-start links its arrows, so that it needs no dummies.
 */

export interface NetworkTask {
  readonly calendar: WorkCalendar;
  /** Working minutes, whole; 0 is an event. */
  readonly work: number;
  /** Not interrupted by the end of a working day unless it is longer than one; then it begins with a day. */
  readonly unbroken?: boolean;
  /** Takes the whole crew. All such tasks have one calendar. */
  readonly crew?: boolean;
  readonly notBefore?: Minute;
}

/** `to` begins no sooner than `lag` after `from` has ended. Tasks by their number. */
export interface NetworkLink {
  readonly from: number;
  readonly to: number;
  /** Minutes; absent: 0. */
  readonly lag?: number;
  /** Drying and curing go on while nobody works, other waits count working minutes of `to`; absent: elapsed. */
  readonly lagRuns?: 'elapsed' | 'working';
  /** Greatest wait: `to` begins no later than this after `from` has ended. Elapsed minutes. */
  readonly most?: number;
}

export interface Network {
  readonly begin: Minute;
  readonly tasks: readonly NetworkTask[];
  readonly links: readonly NetworkLink[];
}

/** A network with its links by task, and its tasks in an order in which every link leads forward. */
export interface IndexedNetwork extends Network {
  readonly order: readonly number[];
  readonly into: readonly (readonly NetworkLink[])[];
  readonly outOf: readonly (readonly NetworkLink[])[];
}

/** @throws Error if links run in a ring */
export function indexNetwork(network: Network): IndexedNetwork {
  const { tasks, links } = network;
  const into = linksBy(tasks.length, links, 'to');
  const outOf = linksBy(tasks.length, links, 'from');
  const missing = into.map(({ length }) => length);
  const order: number[] = [];
  missing.forEach((count, task) => count === 0 && order.push(task));
  for (let i = 0; i < order.length; i++) {
    for (const { to } of outOf[order[i]!]!) if (--missing[to]! === 0) order.push(to);
  }
  if (order.length < tasks.length) throw new Error('links run in a ring');
  return { ...network, order, into, outOf };
}

/** Lists of their true length from the start: growing thousands of them costs more than all passes. */
function linksBy(tasks: number, links: readonly NetworkLink[], end: 'from' | 'to'): NetworkLink[][] {
  const counts = new Int32Array(tasks);
  for (const link of links) counts[link[end]]!++;
  const lists = Array.from(counts, (count) => (count === 0 ? none : new Array<NetworkLink>(count)));
  for (const link of links) lists[link[end]]![--counts[link[end]]!] = link;
  return lists;
}

const none: NetworkLink[] = [];

/** When a link lets its later task begin, given the end of the earlier. */
export function readyAfter({ lag = 0, lagRuns, to }: NetworkLink, finish: Minute, network: Network): Minute {
  if (lagRuns !== 'working' || lag === 0) return finish + lag;
  const { calendar } = network.tasks[to]!;
  return endOfWork(calendar, workBefore(calendar, finish) + lag);
}

/** When the earlier task of a link has to end at the latest, given the beginning of the later. */
export function dueBefore({ lag = 0, lagRuns, to }: NetworkLink, start: Minute, network: Network): Minute {
  if (lagRuns !== 'working' || lag === 0) return start - lag;
  const { calendar } = network.tasks[to]!;
  return startOfWork(calendar, workBefore(calendar, start) - lag);
}
