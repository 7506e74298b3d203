import type { Point } from '../geometry/polygon';
import type { Job } from '../job/schema';
import { findWall } from '../job/shape';
import { searchBestStartInSteps } from '../panels/best-start';
import { crossEdges } from '../panels/area-cross-edges';
import { modulo, type Pattern } from '../panels/grid';
import { jointsOfStart } from '../panels/joint-count';
import { jointClearance } from '../panels/joint-clearance';
import { startQuestionOf } from '../panels/lay-format';
import { createPace, type Steps } from '../panels/pace';
import type { StartCandidate } from '../panels/panel';
import { startMeter } from '../panels/start-meter';
import { shiftAtHeight } from '../panels/start-snaps';
import { startsToCompare } from '../panels/starts-to-compare';
import { asymmetryOf } from '../panels/symmetry';
import { surveyWall } from '../survey/survey';
import type { Hundredth } from '../units';
import { zoneAreas } from '../zones/zone-areas';
import { layoutRequest } from './layout-request';

/** What a start leads to before slivers are shared out and before anything is split or joined by hand. */
export interface StartFigures extends StartCandidate {
  /** Unbroken joints. */
  readonly joints: number;
}

/** Weighs starts of one zone while a hand looks for one. */
export interface StartScale {
  readonly pattern: Pattern;
  /** Where the zone begins: what events count their courses from. */
  readonly bottom: Hundredth;
  /** Coordinates, modulo the pitch, at which the panels change: edges of the zone's area meet a joint there. */
  readonly events: { readonly x: readonly Hundredth[]; readonly y: readonly Hundredth[] };
  figuresAt(start: Point): StartFigures;
  /** The best starts, best first. */
  bestInSteps(): Steps<readonly StartFigures[]>;
}

/** Null where the zone is not there, has no steel, or nothing of it is left to lay. */
export function startScale(job: Job, wallId: string, zoneId: string): StartScale | null {
  const wall = findWall(job, wallId);
  const area = wall && zoneAreas(surveyWall(wall)).find(({ zone }) => zone.id === zoneId);
  const request = wall && area && layoutRequest(job, wall, area);
  const layout = area?.zone.layout;
  const stock = request?.stock.find(({ id }) => id === layout?.stock);
  if (!area || !request || !layout || !stock || area.area.length === 0) return null;
  const clearance = jointClearance(layout, request.cracks);
  const question = startQuestionOf({ ...request, area, layout, stock, clearance });
  const { pattern, countStockSheets, area: searched } = question;
  const { box } = searched;
  const meter = startMeter(question);
  const starts = startsToCompare({ ...question, rules: undefined }, crossEdges(searched.area, box, pattern));
  const events = (axis: 'x' | 'y') => starts[axis].filter(({ isEvent }) => isEvent).map(({ at }) => at);
  const withJoints = (candidate: StartCandidate): StartFigures => {
    return { ...candidate, joints: jointsOfStart(question, candidate.start).joints };
  };
  return {
    pattern,
    bottom: box.bottom,
    events: { x: events('x'), y: events('y') },
    figuresAt(start) {
      const { x, y } = asCounted(start, box.bottom, pattern);
      const counts = meter.countPanels(x, y, Infinity)!;
      const sizes = meter.cutSizes(x, y);
      return withJoints({
        start,
        ...(question.rules && { unmet: question.rules(searched).unmet(start) }),
        slivers: counts.slivers,
        nearCorners: question.nearJoints?.(searched).count(start) ?? 0,
        stockSheets: counts.full + countStockSheets(sizes),
        cutPanels: counts.cut,
        cutLength: counts.cutLength,
        panels: counts.full + counts.cut,
        asymmetry: asymmetryOf({ ...pattern, start }, box),
      });
    },
    *bestInSteps() {
      const { best, runnersUp } = yield* searchBestStartInSteps(question, createPace());
      return [best, ...runnersUp].map(withJoints);
    },
  };
}

/** Modulo the pitch, as a start that is counted from the lowest course over the zone. */
function asCounted({ x, y }: Point, bottom: Hundredth, pattern: Pattern) {
  const { pitchX, pitchY } = pattern;
  return { x: modulo(x - shiftAtHeight(y, bottom, pattern), pitchX), y: modulo(y, pitchY) };
}
