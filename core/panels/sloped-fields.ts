import type { Hundredth } from '../units';
import type { AxisStart } from './axis-starts';
import { cornerStartsAtX, cornerStartsAtY } from './corner-starts';
import type { CountedStarts } from './count-starts';
import { unmetBy } from './by-hand/unmet-by';
import { modulo } from './grid';
import { slopingChains } from './sloping-chains';
import type { StartField } from './start-fields';
import type { StartQuestion } from './start-figures';
import type { Counts, StartMeter } from './start-meter';

/**
 * Where edges slope, the fields along the events of either axis: from one start at which an edge passes a corner of a
 * cell, or which is an event of the other axis, to the next. Only between two such starts do all fall into the same
 * panels. At both ends there are no more panels cut and no more slivers than between, so that it is only counted where
 * both ends are wanted.
 */
export function* slopedFields(
  question: StartQuestion,
  counted: CountedStarts,
  meter: StartMeter,
  isWanted: (counts: Counts) => boolean,
): Generator<StartField | undefined, void, void> {
  const { pitchX, pitchY } = question.pattern;
  const { left, bottom } = question.area.box;
  const chains = slopingChains(question.area.area);
  const known = countsByStart(question, counted);
  const isWantedAt = (x: Hundredth, y: Hundredth) => {
    const counts = known.get(modulo(y, pitchY) * pitchX + modulo(x, pitchX));
    return counts !== undefined && counts.slivers === counted.leastSlivers && isWanted(counts);
  };
  const unmet = unmetBy(question, meter);
  const count = (x: Hundredth, y: Hundredth) => {
    if (meter.isWornOut() || (unmet && unmet(x, y) > counted.leastUnmet)) return undefined;
    const counts = meter.countPanels(x, y, counted.leastSlivers);
    return counts && isWanted(counts) ? counts : undefined;
  };
  for (const y of eventsOf(counted.y)) {
    const ends = [...eventsOf(counted.x), ...chains.flatMap((chain) => cornerStartsAtY(question, chain, y))];
    for (const [from, to] of spansBetween(ends, pitchX, left)) {
      if (!isWantedAt(from, y) || !isWantedAt(to, y)) continue;
      const x = from + Math.floor((to - from) / 2);
      const counts = count(x, y);
      yield counts && { x, y, reachX: [from - x, to - x], reachY: [0, 0], counts };
    }
  }
  for (const x of eventsOf(counted.x)) {
    const ends = [...eventsOf(counted.y), ...chains.flatMap((chain) => cornerStartsAtX(question, chain, x))];
    for (const [from, to] of spansBetween(ends, pitchY, bottom)) {
      if (!isWantedAt(x, from) || !isWantedAt(x, to)) continue;
      const y = from + Math.floor((to - from) / 2);
      const counts = count(x, y);
      yield counts && { x, y, reachX: [0, 0], reachY: [from - y, to - y], counts };
    }
  }
}

const eventsOf = (starts: readonly AxisStart[]) =>
  starts.filter(({ isEvent }) => isEvent).map(({ at }) => at);

/**
 * From each to the next, with something between; the last one goes on to the first, a pitch further.
 *
 * @param origin where the zone begins: counted from there, the order does not hang on the wall's datum
 */
function spansBetween(
  ends: readonly Hundredth[],
  pitch: Hundredth,
  origin: Hundredth,
): [from: Hundredth, to: Hundredth][] {
  const sorted = [...new Set(ends.map((end) => origin + modulo(end - origin, pitch)))].sort((a, b) => a - b);
  return sorted
    .map((from, i): [Hundredth, Hundredth] => [from, sorted[i + 1] ?? sorted[0]! + pitch])
    .filter(([from, to]) => to - from >= 2);
}

/** By y · pitchX + x. */
function countsByStart({ pattern: { pitchX } }: StartQuestion, { x, y, counts, besides }: CountedStarts) {
  const known = new Map<number, Counts>();
  counts.forEach((found, n) => {
    const i = n % x.length;
    if (found) known.set(y[(n - i) / x.length]!.at * pitchX + x[i]!.at, found);
  });
  for (const start of besides) known.set(start.y * pitchX + start.x, start.counts);
  return known;
}
