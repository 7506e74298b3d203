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
  /** The least of what was chosen by hand that any start leaves unmet; counted are those that leave no more. */
  readonly leastUnmet: number;
  readonly compared: number;
  readonly capped: boolean;
}

/**
 * Counts the panels of every pair of coordinates, each given up when it has more slivers than another. Those that leave
 * more unmet of what was chosen by hand than others are not looked at.
 *
 * @param unmet how much a start leaves unmet
 */
export function* countStarts(
  meter: StartMeter,
  { x, y }: StartsToCompare,
  pace: Pace,
  unmet: ((x: Hundredth, y: Hundredth) => number) | undefined,
): Steps<CountedStarts> {
  const lacks = unmet && (yield* lacksOf(unmet, x, y, pace));
  const leastUnmet = lacks ? lacks.reduce((least, one) => Math.min(least, one), Infinity) : 0;
  const counts = new Array<Counts | null>(x.length * y.length).fill(null);
  let leastSlivers = Infinity;
  let looked = 0;
  let compared = 0;
  for (const n of heaviestFirst(x, y)) {
    if (meter.isWornOut()) break;
    if (pace.isDue()) yield;
    looked++;
    if (lacks && lacks[n]! > leastUnmet) continue;
    compared++;
    const i = n % x.length;
    const found = meter.countPanels(x[i]!.at, y[(n - i) / x.length]!.at, leastSlivers);
    if (!found) continue;
    leastSlivers = found.slivers;
    counts[n] = found;
  }
  return { x, y, counts, besides: [], leastSlivers, leastUnmet, compared, capped: looked < counts.length };
}

/** In the measure of `Pace`. */
const workOfLack = 1;

function* lacksOf(
  unmet: (x: Hundredth, y: Hundredth) => number,
  x: readonly AxisStart[],
  y: readonly AxisStart[],
  pace: Pace,
): Steps<Float64Array> {
  const lacks = new Float64Array(x.length * y.length);
  for (let n = 0; n < lacks.length; n++) {
    pace.spend(workOfLack);
    if (pace.isDue()) yield;
    const i = n % x.length;
    lacks[n] = unmet(x[i]!.at, y[(n - i) / x.length]!.at);
  }
  return lacks;
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
