import type { StartCandidate } from './panel';
import { figuresOfStart, type StartQuestion } from './start-figures';
import { startPoint } from './start-point';

export interface BestStart {
  readonly best: StartCandidate;
  readonly runnersUp: readonly StartCandidate[];
  readonly considered: number;
  /** Starts were left out, so that the work stays bounded. */
  readonly capped: boolean;
}

export function searchBestStart(question: StartQuestion): BestStart {
  const names = [
    'lower-left',
    'lower-right',
    'upper-left',
    'upper-right',
    'centre-on-joint',
    'centre-on-panel',
  ] as const;
  const found = names.map((name) =>
    figuresOfStart(question, startPoint(name, question.area.box, question.pattern)),
  );
  found.sort(
    (a, b) =>
      a.slivers - b.slivers ||
      a.stockSheets - b.stockSheets ||
      a.cutPanels - b.cutPanels ||
      a.asymmetry - b.asymmetry,
  );
  return {
    best: found[0]!,
    runnersUp: found.slice(1, 4),
    considered: found.length,
    capped: question.area.area.length > 0,
  };
}
