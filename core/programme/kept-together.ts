import type { IndexedNetwork, NetworkLink } from './network';

/**
 * Which tasks have to be placed together, because a greatest wait lies between them: its two ends and all on the way
 * from the one to the other.
 *
 * @returns groups in the order of their first tasks, each in the order of the network; most have one task
 */
export function keptTogether(network: IndexedNetwork, windows: readonly NetworkLink[]): number[][] {
  const { order, into, outOf } = network;
  const place = new Int32Array(order.length);
  order.forEach((task, i) => (place[task] = i));
  const leader = Int32Array.from(order.keys());
  const leaderOf = (task: number): number => {
    let at = task;
    while (leader[at] !== at) at = leader[at]!;
    return at;
  };
  for (const { from, to } of windows) {
    const after = reached([from], (task) =>
      outOf[task]!.map((link) => link.to).filter((next) => place[next]! <= place[to]!),
    );
    const between = reached([to], (task) =>
      into[task]!.map((link) => link.from).filter((before) => after.has(before)),
    );
    for (const task of between) leader[leaderOf(task)] = leaderOf(from);
  }
  const groups: number[][] = [];
  const groupOf = new Int32Array(order.length).fill(-1);
  for (const task of order) {
    const first = leaderOf(task);
    if (groupOf[first]! >= 0) groups[groupOf[first]!]!.push(task);
    else groupOf[first] = groups.push([task]) - 1;
  }
  return groups;
}

function reached(from: readonly number[], next: (task: number) => readonly number[]): Set<number> {
  const seen = new Set(from);
  for (const task of seen) for (const other of next(task)) seen.add(other);
  return seen;
}
