import type { Hundredth } from '../units';
import { regionArea } from '../geometry/polygon';
import type { CrossEdges } from './area-cross-edges';
import { pairingStarts, type AxisStart } from './axis-starts';
import type { CountedStarts } from './count-starts';
import { nestUntil, promisingStart, type PromisingStart } from './nest-starts';
import type { Pace, Steps } from './pace';
import { compareStarts, type Podium } from './rank';
import type { StartQuestion } from './start-figures';
import type { StartMeter } from './start-meter';
import { axisPatterns } from './starts-to-compare';

const mostPairings = 2_000;
const mostNests = 200;

/**
 * Starts between events fall into the same panels, but of other sizes: where two of them together make a whole
 * stock sheet, sheets may be saved. Compared only where saving one is possible at all.
 */
export function* comparePairings(
  question: StartQuestion,
  meter: StartMeter,
  counted: CountedStarts,
  edges: CrossEdges,
  places: Podium,
  pace: Pace,
): Steps<{ readonly compared: number; readonly capped: boolean }> {
  const { area, pattern, kerf = 0 } = question;
  const best = places.places[0];
  const sheetArea = pattern.width * pattern.height;
  const leastSheets = Math.ceil(regionArea(area.area) / sheetArea - 1e-9);
  if (!best || best.stockSheets <= leastSheets) return { compared: 0, capped: false };

  const axes = axisPatterns(question);
  const { x, y, counts, leastSlivers } = counted;
  const promising: PromisingStart[] = [];
  let compared = 0;
  const look = (atX: Hundredth, atY: Hundredth, n: number): void => {
    if (counts[n]?.slivers !== leastSlivers || compared >= mostPairings) return;
    compared++;
    const count = meter.countPanels(atX, atY, leastSlivers);
    if (!count) return;
    const start = promisingStart(question, meter, atX, atY, count);
    if (start.hope.stockSheets < best.stockSheets) promising.push(start);
  };
  for (const at of pairingStarts(edges.x, axes.x, kerf)) {
    const i = spanOf(x, at);
    if (i >= 0) y.forEach((other, j) => look(at, other.at, j * x.length + i));
    if (pace.isDue()) yield;
  }
  for (const at of pairingStarts(edges.y, axes.y, kerf)) {
    const j = spanOf(y, at);
    if (j >= 0) x.forEach((other, i) => look(other.at, at, j * x.length + i));
    if (pace.isDue()) yield;
  }
  promising.sort((a, b) => compareStarts(a.hope, b.hope, area.box, pattern));
  const { capped } = yield* nestUntil(question, meter, promising, places, mostNests, pace);
  return { compared, capped: capped || compared >= mostPairings };
}

/** The start compared in the span between events that holds a coordinate; −1 on an event or a start compared. */
function spanOf(starts: readonly AxisStart[], at: Hundredth): number {
  const next = starts.findIndex((start) => start.at >= at);
  if (next >= 0 && starts[next]!.at === at) return -1;
  const after = next < 0 ? 0 : next;
  const before = (after + starts.length - 1) % starts.length;
  if (!starts[after]!.isEvent) return after;
  return starts[before]!.isEvent ? -1 : before;
}
