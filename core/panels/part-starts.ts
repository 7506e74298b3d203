import { boxOf, type Point } from '../geometry/polygon';
import type { ZoneArea } from '../zones/zone-area';
import { searchBestStartInSteps, type BestStart } from './best-start';
import { cutSizeOf, type CutSize } from './cut-size';
import type { Pace, Steps } from './pace';
import type { StartCandidate, StartedPart } from './panel';
import { isWholeCell, piecesOfGrid } from './pieces-of-grid';
import { compareStarts } from './rank';
import { figuresOfStart, type StartQuestion } from './start-figures';

export interface PartStarts {
  readonly parts: readonly StartedPart[];
  readonly considered: number;
  readonly capped: boolean;
  /** The parts together; its start is the first part's. */
  readonly chosen: StartCandidate;
  /** The best that one start for all parts leads to, best first. */
  readonly common: readonly StartCandidate[];
}

/** Rounds of choosing one part's start after the other's. */
const mostRounds = 4;

/**
 * A start for each connected part of a zone: of those that are best for it alone, and the one that is best for all
 * parts alike, those that are best together. So parts with starts of their own are never worse than with one.
 *
 * @param question of an area with more than one part
 */
export function* searchPartStartsInSteps(question: StartQuestion, pace: Pace): Steps<PartStarts> {
  const whole = yield* searchBestStartInSteps(question, pace);
  const found: { area: ZoneArea; search: BestStart; choices: Choice[] }[] = [];
  for (const part of question.area.area) {
    const area: ZoneArea = { ...question.area, area: [part], box: boxOf(part.outer) };
    const search = yield* searchBestStartInSteps({ ...question, area }, pace);
    const starts = [search.best, ...search.runnersUp, whole.best].map(({ start }) => start);
    found.push({ area, search, choices: starts.map((start) => weigh({ ...question, area }, start)) });
    yield;
  }

  let picked = found.map(({ choices }) => choices.at(-1)!);
  let together = addUp(question, picked);
  for (let round = 0, better = true; better && round < mostRounds; round++) {
    better = false;
    for (const [i, { choices }] of found.entries()) {
      for (const choice of choices) {
        const other = picked.with(i, choice);
        const sum = addUp(question, other);
        if (compareStarts(sum, together, question.area.box, question.pattern) >= 0) continue;
        [picked, together, better] = [other, sum, true];
      }
      yield;
    }
  }
  return {
    parts: found.map(({ area, search }, i) => ({
      start: picked[i]!.start,
      box: area.box,
      considered: search.considered,
      chosen: addUp(question, [picked[i]!]),
    })),
    considered: whole.considered + found.reduce((sum, { search }) => sum + search.considered, 0),
    capped: whole.capped || found.some(({ search }) => search.capped),
    chosen: together,
    common: [whole.best, ...whole.runnersUp].slice(0, 3),
  };
}

/** A start of one part, what it leads to there, and the sizes of its cut panels. */
interface Choice {
  readonly start: Point;
  readonly figures: StartCandidate;
  readonly cut: readonly CutSize[];
}

function weigh(question: StartQuestion, start: Point): Choice {
  const pieces = piecesOfGrid(question.area.area, { ...question.pattern, start });
  return {
    start,
    figures: figuresOfStart({ ...question, countStockSheets: () => 0 }, start),
    cut: pieces.filter((piece) => !isWholeCell(piece)).map(({ polygon }) => cutSizeOf(polygon)),
  };
}

/** Cut panels of all parts come from the same stock sheets. */
function addUp({ countStockSheets, rules }: StartQuestion, choices: readonly Choice[]): StartCandidate {
  const sum = (
    figure: 'slivers' | 'nearCorners' | 'cutPanels' | 'cutLength' | 'panels' | 'asymmetry' | 'unmet',
  ) => choices.reduce((total, { figures }) => total + (figures[figure] ?? 0), 0);
  const cut = choices.flatMap((choice) => choice.cut);
  return {
    start: choices[0]!.start,
    ...(rules && { unmet: sum('unmet') }),
    slivers: sum('slivers'),
    nearCorners: sum('nearCorners'),
    stockSheets: sum('panels') - cut.length + countStockSheets(cut),
    cutPanels: cut.length,
    cutLength: sum('cutLength'),
    panels: sum('panels'),
    asymmetry: sum('asymmetry'),
  };
}
