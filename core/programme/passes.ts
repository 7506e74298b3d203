import type { Minute } from './calendar';
import { dueBefore, readyAfter, type IndexedNetwork, type NetworkLink } from './network';
import { placeBegunBy, placeEndingFrom, placeFrom, placeUntil, type Placement } from './placement';

/*
 * The two passes of the critical path method (J. E. Kelley, M. R. Walker, Critical-Path Planning and Scheduling, 1959),
 * with calendars. Greatest waits are kept by beginning the earlier task later, or the later one sooner, until none is
 * broken: moves go one way only, so that the first that keeps them all is the earliest, or the latest.
 */

export interface Pass {
  readonly placements: readonly Placement[];
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
    if ('placements' in tried) return { placements: tried.placements, missed };
    missed.add(tried.broken);
  }
}

/** Placements that keep these greatest waits, or the one that is moved and moved and still broken. */
function tryEarliest(
  network: IndexedNetwork,
  windows: readonly NetworkLink[],
): { placements: readonly Placement[] } | { broken: NetworkLink } {
  const { tasks, order, into, begin } = network;
  const placements: Placement[] = new Array<Placement>(tasks.length);
  const bounds = tasks.map(({ notBefore = begin }) => Math.max(notBefore, begin));
  const moves = new Map<NetworkLink, number>();
  for (;;) {
    for (const task of order) {
      let ready = bounds[task]!;
      for (const link of into[task]!) {
        ready = Math.max(ready, readyAfter(link, placements[link.from]!.finish, network));
      }
      placements[task] = placeFrom(tasks[task]!, ready);
    }
    const broken = windows.filter((link) => isLate(link, placements));
    if (broken.length === 0) return { placements };
    for (const link of broken) {
      const count = (moves.get(link) ?? 0) + 1;
      if (count > mostMoves || isImpossible(link)) return { broken: link };
      moves.set(link, count);
      const { start } = placeEndingFrom(tasks[link.from]!, placements[link.to]!.start - link.most!);
      bounds[link.from] = Math.max(bounds[link.from]!, start);
    }
  }
}

/** Whether the later task of a greatest wait begins too late. */
export function isLate({ from, to, most }: NetworkLink, placements: readonly Placement[]): boolean {
  return most !== undefined && placements[to]!.start > placements[from]!.finish + most;
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
): readonly Placement[] {
  const { tasks, order, outOf } = network;
  const placements: Placement[] = new Array<Placement>(tasks.length);
  const bounds = tasks.map(() => Infinity);
  const windows = network.links.filter((link) => link.most !== undefined && !missed.has(link));
  for (;;) {
    for (let i = order.length - 1; i >= 0; i--) {
      const task = order[i]!;
      let due = end;
      for (const link of outOf[task]!) {
        due = Math.min(due, dueBefore(link, placements[link.to]!.start, network));
      }
      const placement = placeUntil(tasks[task]!, due);
      placements[task] =
        placement.start <= bounds[task]! ? placement : placeBegunBy(tasks[task]!, bounds[task]!);
    }
    let moved = false;
    for (const { from, to, most } of windows) {
      const begun = placements[from]!.finish + most!;
      if (placements[to]!.start <= begun) continue;
      bounds[to] = Math.min(bounds[to]!, begun);
      moved = true;
    }
    if (!moved) return placements;
  }
}
