import { boxOf, type Point } from '../geometry/polygon';
import type { EdgeCause } from '../survey/surveyed-wall';
import type { Panel } from './panel';
import type { Seam } from './seams';

/** A batten that panels stand on where nothing else carries them; wall frame, hundredths, from left to right. */
export interface StartingBatten {
  readonly from: Point;
  readonly to: Point;
}

export interface FixingOrder {
  readonly battens: readonly StartingBatten[];
  /** Marks in the order of fixing. */
  readonly order: readonly string[];
}

/** A panel's edge that faces down: level, or less steep than upright by this much. */
const FACES_DOWN = 0.5;

/**
 * The order in which panels are fixed: course by course from below, each course from the left, every panel on one
 * that is fixed already, on the floor, or on a starting batten, and against the neighbour before it. Closing panels
 * come last: what would stand on them stands on a batten until they are measured and cut.
 */
export function fixingOrder(
  panels: readonly Panel[],
  seams: readonly Seam[],
  closing: ReadonlySet<number>,
): FixingOrder {
  const below = panels.map(() => new Set<number>());
  const leftOf = panels.map(() => new Set<number>());
  for (const { axis, before, after } of seams) {
    // A panel beside or above one that comes last is set by its own line, not against it.
    if (closing.has(before) && !closing.has(after)) continue;
    (axis === 'x' ? leftOf : below)[after]!.add(before);
  }
  const place = panels.map(({ outline }) => boxOf(outline.outer));
  const preferred = [...panels.keys()].sort((a, b) => {
    const later = Number(closing.has(a)) - Number(closing.has(b));
    return later || place[a]!.bottom - place[b]!.bottom || place[a]!.left - place[b]!.left || a - b;
  });
  const waitsFor = panels.map((_, panel) => [...below[panel]!, ...leftOf[panel]!]);
  return {
    battens: battensFor(panels, below, closing),
    order: inOrder(preferred, waitsFor).map((panel) => panels[panel]!.mark),
  };
}

/**
 * Each as early as it is preferred once all that it waits for are there. Notched panels may hold on to each other
 * in a ring; then the most preferred of those left begins.
 */
function inOrder(preferred: readonly number[], waitsFor: readonly (readonly number[])[]): number[] {
  const rank = new Map(preferred.map((panel, i) => [panel, i]));
  const missing = waitsFor.map((others) => others.length);
  const awaitedBy = waitsFor.map((): number[] => []);
  waitsFor.forEach((others, panel) => others.forEach((other) => awaitedBy[other]!.push(panel)));
  const ready = preferred.filter((panel) => missing[panel] === 0);
  const done = new Set<number>();
  const order: number[] = [];
  while (order.length < preferred.length) {
    const next = ready.shift() ?? preferred.find((panel) => !done.has(panel))!;
    if (done.has(next)) continue;
    done.add(next);
    order.push(next);
    for (const panel of awaitedBy[next]!) {
      missing[panel]!--;
      if (missing[panel] === 0) insert(ready, panel, rank);
    }
  }
  return order;
}

function insert(ready: number[], panel: number, rank: ReadonlyMap<number, number>): void {
  let [low, high] = [0, ready.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rank.get(ready[middle]!)! < rank.get(panel)!) low = middle + 1;
    else high = middle;
  }
  ready.splice(low, 0, panel);
}

/** Under every panel that stands neither on another nor on the floor; level battens in line are one. */
function battensFor(
  panels: readonly Panel[],
  below: readonly ReadonlySet<number>[],
  closing: ReadonlySet<number>,
): StartingBatten[] {
  const battens: StartingBatten[] = [];
  panels.forEach((panel, i) => {
    const feet = edgesBelow(panel);
    if (below[i]!.size > 0 || feet.some(({ cause }) => isFloor(cause))) return;
    // Between an opening and the steel above it, a panel cut to measure has something to hold on to.
    if (closing.has(i) && feet.every(({ cause }) => cause?.kind === 'opening')) return;
    battens.push(...feet.map(({ from, to }) => ({ from, to })));
  });
  battens.sort((a, b) => a.from.y - b.from.y || a.from.x - b.from.x);
  return battens.reduce<StartingBatten[]>((joined, batten) => {
    const before = joined.at(-1);
    const isLevel = batten.from.y === batten.to.y;
    if (!before || !isLevel || before.from.y !== batten.from.y || before.to.y !== batten.from.y) {
      return [...joined, batten];
    }
    if (batten.from.x - before.to.x > LONGEST_GAP) return [...joined, batten];
    return [
      ...joined.slice(0, -1),
      { from: before.from, to: batten.to.x > before.to.x ? batten.to : before.to },
    ];
  }, []);
}

/** One batten runs on behind joints; 20 mm. */
const LONGEST_GAP = 2000;

function isFloor(cause: EdgeCause | undefined): boolean {
  return cause?.kind === 'rim' && cause.side === 'floor';
}

/** The edges that a panel could stand on: those facing down at its lowest level, or its lowest slope. */
function edgesBelow({ outline, causes }: Panel): { from: Point; to: Point; cause: EdgeCause | undefined }[] {
  const { outer } = outline;
  const facing = outer.flatMap((from, i) => {
    const to = outer[(i + 1) % outer.length]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    // Anticlockwise, an edge that runs to the right has the steel above it.
    if ((to.x - from.x) / length < FACES_DOWN) return [];
    return [{ from, to, cause: causes[0]?.[i] }];
  });
  const lowest = Math.min(...facing.map(({ from, to }) => Math.min(from.y, to.y)));
  return facing.filter(({ from, to }) => Math.min(from.y, to.y) === lowest);
}
