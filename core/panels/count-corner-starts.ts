import type { Hundredth } from '../units';
import type { AxisStart } from './axis-starts';
import { cornerStartsAtX, cornerStartsAtY } from './corner-starts';
import type { CountedStarts } from './count-starts';
import { unmetBy } from './by-hand/unmet-by';
import { doubleCornerStarts } from './double-corner-starts';
import type { Pace, Steps } from './pace';
import { slopingChains } from './sloping-chains';
import type { StartQuestion } from './start-figures';
import type { StartMeter } from './start-meter';
import { mostStartsFor } from './starts-to-compare';

/** Starts at corners that one search compares; a zone of forty panels under a slope has some five hundred. */
const mostCornerStarts = 3_000;

/**
 * Counts besides the panels of the starts at which a sloping or curved edge passes a corner of a cell, on every
 * event of either axis, and at which two such edges do so at once, each given up when it has more slivers than the best
 * so far.
 *
 * Spans between these events are not looked at: from a start in one of them the grid can be moved to an event with
 * no panel cut that was whole, none more, and none more narrow than before. Of an arc, however many edges draw it,
 * each quarter is one edge. The longest edges come first, and events at long edges; `capped` if not all could be
 * counted.
 */
export function* countCornerStarts(
  question: StartQuestion,
  meter: StartMeter,
  counted: CountedStarts,
  pace: Pace,
): Steps<CountedStarts> {
  const most = Math.min(mostCornerStarts, mostStartsFor(question) - counted.compared);
  const unmet = unmetBy(question, meter);
  let besides = [...counted.besides];
  let { counts: pairs, leastSlivers, leastUnmet } = counted;
  let compared = 0;
  let capped = false;
  for (const { x, y } of cornerStarts(question, counted)) {
    if (compared >= most || meter.isWornOut()) {
      capped = true;
      break;
    }
    if (pace.isDue()) yield;
    compared++;
    const lack = unmet?.(x, y) ?? 0;
    if (lack > leastUnmet) continue;
    if (lack < leastUnmet) {
      leastUnmet = lack;
      leastSlivers = Infinity;
      besides = [];
      pairs = pairs.map(() => null);
    }
    const counts = meter.countPanels(x, y, leastSlivers);
    if (!counts) continue;
    leastSlivers = counts.slivers;
    besides.push({ x, y, counts });
  }
  return {
    ...counted,
    counts: pairs,
    besides,
    leastSlivers,
    leastUnmet,
    compared: counted.compared + compared,
    capped: counted.capped || capped,
  };
}

interface CornerStart {
  readonly x: Hundredth;
  readonly y: Hundredth;
}

/** Each once, and none that is among the pairs of both axes' starts. */
function* cornerStarts(question: StartQuestion, { x, y }: CountedStarts): Generator<CornerStart, void, void> {
  const known = [new Set(x.map(({ at }) => at)), new Set(y.map(({ at }) => at))] as const;
  const seen = new Set<number>();
  const isNew = (atX: Hundredth, atY: Hundredth) => {
    if (known[0].has(atX) && known[1].has(atY)) return false;
    const key = atY * question.pattern.pitchX + atX;
    return !seen.has(key) && Boolean(seen.add(key));
  };
  const [eventsX, eventsY] = [eventsOf(x), eventsOf(y)];
  for (const chain of slopingChains(question.area.area)) {
    for (const at of eventsX) {
      for (const other of cornerStartsAtX(question, chain, at))
        if (isNew(at, other)) yield { x: at, y: other };
    }
    for (const at of eventsY) {
      for (const other of cornerStartsAtY(question, chain, at))
        if (isNew(other, at)) yield { x: other, y: at };
    }
  }
  for (const { x: atX, y: atY } of doubleCornerStarts(question))
    if (isNew(atX, atY)) yield { x: atX, y: atY };
}

/** Those on an event or always looked at, the ones at long edges first. */
function eventsOf(starts: readonly AxisStart[]): Hundredth[] {
  return starts
    .filter(({ isEvent, weight }) => isEvent || weight === Infinity)
    .sort((a, b) => b.weight - a.weight || a.at - b.at)
    .map(({ at }) => at);
}
