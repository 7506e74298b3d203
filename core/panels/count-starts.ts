import type { AxisStart } from './axis-starts';
import type { Hundredth } from '../units';
import type { Pace, Steps } from './pace';
import type { Counts, StartMeter } from './start-meter';
import type { StartsToCompare } from './starts-to-compare';

/** A start that is no pair of both axes' starts. */
export interface StartBesides {
  readonly x: Hundredth;
  readonly y: Hundredth;
  readonly counts: Counts;
}

export interface CountedStarts {
  readonly x: readonly AxisStart[];
  readonly y: readonly AxisStart[];
  /**
   * What x number i and y number j lead to, at j · x.length + i; null where there are more slivers than
   * elsewhere, or where it was not looked.
   */
  readonly counts: readonly (Counts | null)[];
  readonly besides: readonly StartBesides[];
  readonly leastSlivers: number;
  readonly compared: number;
  readonly capped: boolean;
}

/** Counts the panels of every pair of coordinates, each given up when it has more slivers than another. */
export function* countStarts(meter: StartMeter, { x, y }: StartsToCompare, pace: Pace): Steps<CountedStarts> {
  const counts = new Array<Counts | null>(x.length * y.length).fill(null);
  let leastSlivers = Infinity;
  let compared = 0;
  for (const n of heaviestFirst(x, y)) {
    if (meter.isWornOut()) break;
    if (pace.isDue()) yield;
    compared++;
    const i = n % x.length;
    const found = meter.countPanels(x[i]!.at, y[(n - i) / x.length]!.at, leastSlivers);
    if (!found) continue;
    leastSlivers = found.slivers;
    counts[n] = found;
  }
  return { x, y, counts, besides: [], leastSlivers, compared, capped: compared < counts.length };
}

/**
 * Starts at long edges first: they tend to be good ones, so that others are given up early, and where not all
 * can be compared these are.
 */
function* heaviestFirst(x: readonly AxisStart[], y: readonly AxisStart[]): Generator<number, void, void> {
  const byWeight = (starts: readonly AxisStart[]) =>
    starts.map((_, i) => i).sort((a, b) => starts[b]!.weight - starts[a]!.weight || a - b);
  const [orderX, orderY] = [byWeight(x), byWeight(y)];
  for (let places = 0; places < x.length + y.length - 1; places++) {
    for (let i = Math.max(0, places - y.length + 1); i <= Math.min(places, x.length - 1); i++) {
      yield orderY[places - i]! * x.length + orderX[i]!;
    }
  }
}
