import { workBefore, type Minute } from './calendar';
import { timed, type Schedule } from './critical-path';
import { CrewTime, type Stretch } from './crew-time';
import { keptTogether } from './kept-together';
import { indexNetwork, readyAfter, type IndexedNetwork, type Network, type NetworkLink } from './network';
import { earliestPass, isImpossible, isLate, latestPass, mostMoves } from './passes';
import {
  lastFinish,
  noDates,
  placeEndingFrom,
  placeFrom,
  placementAt,
  setDates,
  type Dates,
} from './placement';
import { ReadyQueue } from './ready-queue';

/**
 * Dates of a network whose tasks share one crew: what needs the crew is done one after the other. A serial schedule: of
 * the tasks whose predecessors have dates, that with the least latest start comes next, of several alike the one that
 * comes first in the network, and gets the first gap of the crew's time where it fits. Tasks between which a greatest wait lies get their
 * dates together. Floats and critical path count the order in which the crew goes from task to task.
 *
 * Source: J. E. Kelley, The Critical-Path Method: Resources Planning and Scheduling, in Industrial Scheduling, 1963; the
 * rule of the least latest start: E. W. Davis, J. H. Patterson, Management Science 21 (1975), both from memory. It is a
 * rule of thumb: it need not give the shortest programme.
 * @throws Error if links run in a ring
 */
export function shareCrew(network: Network): Schedule {
  const indexed = indexNetwork(network);
  const crew = network.tasks.filter((task) => task.crew && task.work > 0);
  const shared: SharedCrew = {
    network: indexed,
    bounds: network.tasks.map(({ notBefore = network.begin }) => Math.max(notBefore, network.begin)),
    dates: noDates(network.tasks.length),
    time: new CrewTime(crew.reduce((least, { work }) => Math.min(least, work), Infinity)),
    missed: new Set(network.links.filter(isImpossible)),
  };
  placeAll(shared);
  const { dates, missed } = shared;
  const inTurn = indexNetwork({ ...network, links: [...network.links, ...turnsOf(network, dates)] });
  return timed(inTurn, { dates, missed });
}

interface SharedCrew {
  readonly network: IndexedNetwork;
  readonly bounds: number[];
  readonly dates: Dates;
  readonly time: CrewTime;
  readonly missed: Set<NetworkLink>;
}

function placeAll(shared: SharedCrew): void {
  const { network, missed } = shared;
  const windows = network.links.filter((link) => link.most !== undefined && !missed.has(link));
  const priority = latestStarts(network);
  let groups = keptTogether(network, windows);
  let placed = 0;
  while (placed < groups.length) {
    placed = placeInTurn(shared, groups, priority);
    // Windows that cross one another can hold each other up: then the rest is placed task by task.
    if (placed < groups.length) {
      groups = groups.flat().flatMap((task) => (isPlaced(shared, task) ? [] : [[task]]));
      placed = 0;
    }
  }
}

/** @returns how many groups got their dates; fewer than all if groups wait for one another */
function placeInTurn(shared: SharedCrew, groups: readonly number[][], priority: ArrayLike<number>): number {
  const { network } = shared;
  const groupOf = new Int32Array(network.tasks.length).fill(-1);
  groups.forEach((group, i) => group.forEach((task) => (groupOf[task] = i)));
  const urgency = groups.map((group) =>
    group.reduce((least, task) => Math.min(least, priority[task]!), Infinity),
  );
  const missing = new Int32Array(groups.length);
  for (const { from, to } of network.links) {
    const isOutside = groupOf[from] !== groupOf[to] && groupOf[to]! >= 0 && !isPlaced(shared, from);
    if (isOutside) missing[groupOf[to]!]!++;
  }
  const ready = new ReadyQueue(urgency);
  missing.forEach((count, group) => count === 0 && ready.add(group));
  let placed = 0;
  for (let group = ready.next(); group !== undefined; group = ready.next()) {
    placeGroup(shared, groups[group]!);
    placed++;
    for (const task of groups[group]!) {
      for (const { to } of network.outOf[task]!) {
        const other = groupOf[to]!;
        if (other >= 0 && other !== group && --missing[other]! === 0) ready.add(other);
      }
    }
  }
  return placed;
}

/** Dates for tasks whose predecessors outside have theirs; greatest waits among them kept where that is possible. */
function placeGroup(shared: SharedCrew, group: readonly number[]): void {
  const { network, missed } = shared;
  if (group.length === 1) {
    const stretch = placeTask(shared, group[0]!, shared.bounds[group[0]!]!, []);
    if (stretch) shared.time.take(stretch);
    lookAtWindowsInto(shared, group);
    return;
  }
  const windows = group.flatMap((task) =>
    network.outOf[task]!.filter((link) => link.most !== undefined && group.includes(link.to)),
  );
  for (;;) {
    const tried = tryGroup(
      shared,
      group,
      windows.filter((link) => !missed.has(link)),
    );
    if ('taken' in tried) {
      tried.taken.forEach((stretch) => shared.time.take(stretch));
      break;
    }
    missed.add(tried.broken);
  }
  lookAtWindowsInto(shared, group);
}

/** A window from outside the group was set up task by task: it is looked at, not moved for. */
function lookAtWindowsInto({ network, dates, missed }: SharedCrew, group: readonly number[]): void {
  for (const task of group) {
    for (const link of network.into[task]!) if (isLate(link, dates)) missed.add(link);
  }
}

/** @returns the crew's time that it takes, besides what is taken already; null if it takes none */
function placeTask(
  { network, dates, time }: SharedCrew,
  task: number,
  bound: Minute,
  taken: readonly Stretch[],
): Stretch | null {
  const placed = network.tasks[task]!;
  let ready = bound;
  for (const link of network.into[task]!) {
    ready = Math.max(ready, readyAfter(link, dates.finishes[link.from]!, network));
  }
  if (!placed.crew || placed.work === 0) {
    setDates(dates, task, placeFrom(placed, ready));
    return null;
  }
  const from = time.firstPlace(placed, workBefore(placed.calendar, ready), taken);
  setDates(dates, task, placementAt(placed, from));
  return { from, to: from + placed.work };
}

function tryGroup(
  shared: SharedCrew,
  group: readonly number[],
  windows: readonly NetworkLink[],
): { taken: readonly Stretch[] } | { broken: NetworkLink } {
  const { network, bounds, dates } = shared;
  const { tasks } = network;
  const own = new Map(group.map((task) => [task, bounds[task]!]));
  for (let moves = 0; ; moves++) {
    const taken: Stretch[] = [];
    for (const task of group) {
      const stretch = placeTask(shared, task, own.get(task)!, taken);
      if (stretch) taken.push(stretch);
    }
    const broken = windows.filter((link) => isLate(link, dates));
    if (broken.length === 0) return { taken };
    if (moves === mostMoves) return { broken: broken[0]! };
    for (const { from, to, most } of broken) {
      const { start } = placeEndingFrom(tasks[from]!, dates.starts[to]! - most!);
      own.set(from, Math.max(own.get(from)!, start));
    }
  }
}

/** What has the least latest start when nobody waits for the crew. */
function latestStarts(network: IndexedNetwork): Float64Array {
  const free = withoutWindows(network);
  const { dates } = earliestPass(free);
  return latestPass(free, lastFinish(dates, network.begin)).starts;
}

function isPlaced({ dates }: SharedCrew, task: number): boolean {
  return !Number.isNaN(dates.starts[task]);
}

function withoutWindows(network: IndexedNetwork): IndexedNetwork {
  return { ...network, links: network.links.filter(({ most }) => most === undefined) };
}

/** Links from each task of the crew to its next. */
function turnsOf({ tasks }: Network, { starts }: Dates): NetworkLink[] {
  const turns = tasks.flatMap(({ crew, work }, task) => (crew && work > 0 ? [task] : []));
  turns.sort((a, b) => starts[a]! - starts[b]!);
  return turns.slice(1).map((to, i) => ({ from: turns[i]!, to }));
}
