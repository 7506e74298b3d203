import type { Hundredth } from '../units';
import type { CountedStarts } from './count-starts';
import type { CutSize } from './cut-size';
import { leastStockSheets } from './least-sheets';
import type { Pace, Steps } from './pace';
import type { StartCandidate } from './panel';
import { compareStarts, type Podium } from './rank';
import type { StartQuestion } from './start-figures';
import type { Counts, StartMeter } from './start-meter';
import { asymmetryOf } from './symmetry';

/** A start with a lower bound in place of its stock sheets. */
export interface PromisingStart {
  readonly hope: StartCandidate;
  readonly full: number;
  /** Coordinates that the meter knows it by. */
  readonly x: Hundredth;
  readonly y: Hundredth;
}

/** Nests of one search; most starts never get that far. */
const mostNests = 400;

/** What a start, and each of its cut panels, cost in the measure of `Pace`. */
const workOfPromising = 5;
const workOfBound = 10;
const workOfNest = 20;

/** Nests the starts with the fewest slivers, the most promising first, until none of the others can place. */
export function* nestPromising(
  question: StartQuestion,
  meter: StartMeter,
  { x, y, counts, besides, leastSlivers }: CountedStarts,
  places: Podium,
  pace: Pace,
): Steps<{ readonly capped: boolean }> {
  const promising: PromisingStart[] = [];
  for (let n = 0; n < counts.length; n++) {
    const count = counts[n];
    if (count?.slivers !== leastSlivers) continue;
    const i = n % x.length;
    promising.push(promisingStart(question, meter, x[i]!.at, y[(n - i) / x.length]!.at, count));
    pace.spend(workOfPromising);
    if (pace.isDue()) yield;
  }
  for (const { x: atX, y: atY, counts: count } of besides) {
    if (count.slivers !== leastSlivers) continue;
    promising.push(promisingStart(question, meter, atX, atY, count));
    pace.spend(workOfPromising);
    if (pace.isDue()) yield;
  }
  promising.sort((a, b) => compareStarts(a.hope, b.hope, question.area.box, question.pattern));
  return yield* nestUntil(question, meter, promising, places, mostNests, pace);
}

export function promisingStart(
  { area, pattern, nearJoints, rules }: StartQuestion,
  meter: StartMeter,
  x: Hundredth,
  y: Hundredth,
  { slivers, full, cut, covered, cutLength }: Counts,
): PromisingStart {
  const start = meter.startAt(x, y);
  const hope = {
    start,
    ...(rules && { unmet: rules(area).unmet(start) }),
    slivers,
    nearCorners: nearJoints?.(area).count(start) ?? 0,
    stockSheets: full + Math.ceil(covered / (pattern.width * pattern.height) - 1e-9),
    cutPanels: cut,
    cutLength,
    panels: full + cut,
    asymmetry: asymmetryOf({ ...pattern, start }, area.box),
  };
  return { hope, full, x, y };
}

/**
 * Nests in the order given whatever may still place.
 *
 * @param most nests to spend; `capped` says that they did not suffice
 */
export function* nestUntil(
  { pattern, countStockSheets }: StartQuestion,
  meter: StartMeter,
  promising: readonly PromisingStart[],
  places: Podium,
  most: number,
  pace: Pace,
): Steps<{ readonly capped: boolean }> {
  const known = new Map<string, number>();
  for (const { hope, full, x, y } of promising) {
    if (!places.wouldPlace(hope)) continue;
    const sizes = meter.cutSizes(x, y);
    pace.spend(sizes.length * workOfBound);
    if (pace.isDue()) yield;
    const least = full + leastStockSheets(sizes, pattern.width, pattern.height);
    if (!places.wouldPlace({ ...hope, stockSheets: least })) continue;
    const key = sizesKey(sizes);
    let sheets = known.get(key);
    if (sheets === undefined) {
      if (known.size >= most) return { capped: true };
      known.set(key, (sheets = countStockSheets(sizes)));
      pace.spend(sizes.length * workOfNest);
    }
    places.enter({ ...hope, stockSheets: full + sheets }, sizes);
  }
  return { capped: false };
}

function sizesKey(sizes: readonly CutSize[]): string {
  return sizes
    .map(({ width, height, area }) => `${width} ${height} ${area}`)
    .sort()
    .join('|');
}
