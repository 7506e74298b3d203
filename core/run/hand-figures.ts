import type { Job, Wall } from '../job/schema';
import { findWall } from '../job/shape';
import { layOutZoneInSteps } from '../panels/lay-out';
import type { Steps } from '../panels/pace';
import type { ZoneLayout } from '../panels/panel';
import type { ZoneArea } from '../zones/zone-area';
import { layoutRequest } from './layout-request';
import { lineRunOf, lineRuns } from './line-runs';
import { zoneScale } from './zone-figures';

/** What a zone's own panels come to, as they are laid: after slivers were shared out and after every choice by hand. */
export interface HandFigures {
  /** By the quick count. */
  readonly stockSheets: number;
  readonly cutPanels: number;
  readonly slivers: number;
  readonly panels: number;
}

/** What a zone comes to with what was chosen by hand in it; null where it is not there or has no steel. */
export function* handFigures(job: Job, wallId: string, zoneId: string): Steps<HandFigures | null> {
  const wall = findWall(job, wallId);
  const scale = zoneScale(job, wallId, zoneId);
  if (!wall || !scale) return null;
  const runs = lineRuns(job);
  const layOut = function* (one: Wall, area: ZoneArea): Steps<ZoneLayout | undefined> {
    const run = yield* lineRunOf(runs.runOf(one, area), one, area, runs, layOut);
    const request = layoutRequest(job, one, area, run);
    return request && (yield* layOutZoneInSteps(request));
  };
  const area = runs.measure(wall).areas.find(({ zone }) => zone.id === zoneId);
  const layout = area && (yield* layOut(wall, area));
  if (!layout) return null;
  const { stockSheets, cutPanels, slivers, panels } = scale.quickly(layout.panels);
  return { stockSheets, cutPanels, slivers, panels };
}
