import { countCornerStarts } from './count-corner-starts';
import { countStarts } from './count-starts';
import { crossEdges } from './area-cross-edges';
import { searchInside } from './inner-starts';
import { nestPromising } from './nest-starts';
import { createPace, runSteps, type Pace, type Steps } from './pace';
import type { StartCandidate } from './panel';
import { podium } from './rank';
import { unmetBy } from './by-hand/unmet-by';
import { figuresOfStart, type StartQuestion } from './start-figures';
import { startMeter } from './start-meter';
import { startsToCompare } from './starts-to-compare';

export interface BestStart {
  readonly best: StartCandidate;
  /** The next best, up to three, none of them nearly the same as a better one. */
  readonly runnersUp: readonly StartCandidate[];
  /** Starts compared. */
  readonly considered: number;
  /** Starts were left out, so that the work stays bounded. */
  readonly capped: boolean;
}

/**
 * The best start of a zone's panels, in the order of `compareStarts`.
 *
 * Every event of both axes and every span between events is compared (see `axis-starts.ts`), so for an area of
 * axis-parallel edges no start whatever has fewer slivers, and none with as few slivers falls into other panels
 * than some start compared. Where an edge slopes or curves, the starts at which it passes a corner of a cell are
 * compared on every event of either axis besides (see `corner-starts.ts`), and those at which two edges do so at once
 * (see `double-corner-starts.ts`); not those where a panel between a slope and another edge of the area comes to the
 * least width at an upright or level joint.
 *
 * Stock sheets depend on the sizes as well. Between two events these grow and shrink evenly, so starts at which as many
 * sets as can of up to four panels fit side by side into a stock sheet's width or height, kerf included, are compared
 * besides, wherever a bound leaves them a chance to save a stock sheet or a cut panel (see `inner-starts.ts`). Symmetry is
 * compared among all these and the two starts that are symmetric.
 *
 * Of what was chosen by hand as much is met as any start meets, and only starts that meet as much are compared: where
 * a joint has to lie on a line, those that bring it there.
 *
 * Sizes are only worked out for starts without more slivers than the best, and nested only where a lower bound
 * leaves them a chance. The work is bounded in steps, not in time, so that everyone gets the same answer.
 */
export function searchBestStart(question: StartQuestion): BestStart {
  return runSteps(searchBestStartInSteps(question, createPace()));
}

/** As `searchBestStart`, with pauses. */
export function* searchBestStartInSteps(question: StartQuestion, pace: Pace): Steps<BestStart> {
  const { area, pattern, leastWidth } = question;
  if (area.area.length === 0) {
    const { left: x, bottom: y } = area.box;
    return { best: figuresOfStart(question, { x, y }), runnersUp: [], considered: 1, capped: false };
  }
  const edges = crossEdges(area.area, area.box, pattern);
  const starts = startsToCompare(question, edges);
  const meter = startMeter(question, pace);
  yield;
  const crossed = yield* countStarts(meter, starts, pace, unmetBy(question, meter));
  yield;
  const counted = yield* countCornerStarts(question, meter, crossed, pace);
  yield;
  const places = podium(4, Math.max(leastWidth, 100), area.box, pattern);
  const nested = yield* nestPromising(question, meter, counted, places, pace);
  const inner = starts.capped ? { compared: 0 } : yield* searchInside(question, meter, counted, places, pace);
  const [best, ...runnersUp] = places.places;
  return {
    best: best!,
    runnersUp,
    considered: counted.compared + inner.compared,
    capped: starts.capped || counted.capped || nested.capped,
  };
}
