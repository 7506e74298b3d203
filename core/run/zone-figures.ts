import { polygonArea, type Region } from '../geometry/polygon';
import type { Job } from '../job/schema';
import { findWall } from '../job/shape';
import { growZone, type ZoneGrowth } from '../job/zone-edges';
import { cutSizeOf, type CutSize } from '../panels/cut-size';
import { layOutZoneInSteps } from '../panels/lay-out';
import type { Steps } from '../panels/pace';
import type { Panel } from '../panels/panel';
import type { PanelCosts } from '../panels/panel-costs';
import { surveyWall } from '../survey/survey';
import type { ZoneArea } from '../zones/zone-area';
import { zoneAreas } from '../zones/zone-areas';
import { layoutRequest } from './layout-request';
import { panelCosts } from './panel-costs';

/** What the panels of a wall come to when they are cut by themselves. */
export interface ZoneFigures {
  readonly slivers: number;
  readonly stockSheets: number;
  readonly cutPanels: number;
  readonly panels: number;
  /** What the panels cover, m². */
  readonly area: number;
  /** Whole minor units of the job's currency; where no stock has a price, mm² of stock sheets. */
  readonly cost: number;
}

/** Lays out a zone at other sizes, and counts. */
export interface ZoneScale {
  /** The zone as it is. */
  readonly area: ZoneArea;
  /** What of the wall can carry steel. */
  readonly usable: Region;
  /** Panels of the whole wall, since a zone that grows takes room from those listed after it. */
  panelsAt(growth: ZoneGrowth): Steps<readonly Panel[]>;
  /** Figures by the quick count: for comparing many. */
  quickly(panels: readonly Panel[]): ZoneFigures;
  /** A cost in words, `12.80 EUR`; null where no stock has a price. */
  inWords(cost: number): string | null;
  /** Figures by the cutting plan. */
  byPlan(panels: readonly Panel[]): Steps<ZoneFigures>;
}

/** Null where the zone is not there or has no steel. */
export function zoneScale(job: Job, wallId: string, zoneId: string): ZoneScale | null {
  const wall = findWall(job, wallId);
  const zone = wall?.zones.find(({ id }) => id === zoneId);
  if (!wall || !zone?.layout) return null;
  const survey = surveyWall(wall);
  const now = zoneAreas(survey);
  const area = now.find(({ zone: { id } }) => id === zoneId)!;
  if (!layoutRequest(job, wall, area)) return null;
  const costs = panelCosts(job, job.stock);

  // Zones that the growing one does not reach are laid out once.
  const known = new Map<string, readonly Panel[]>();
  function* panelsOf(one: ZoneArea): Steps<readonly Panel[]> {
    const request = layoutRequest(job, wall!, one);
    if (!request) return [];
    const key = JSON.stringify([one.zone.id, one.box, one.area]);
    let panels = known.get(key);
    if (!panels) known.set(key, (panels = (yield* layOutZoneInSteps(request)).panels));
    return panels;
  }
  return {
    area,
    usable: survey.usable,
    *panelsAt(growth) {
      const grownWall = findWall(growZone(job, wallId, zoneId, growth), wallId)!;
      const panels: Panel[] = [];
      for (const one of zoneAreas({ ...survey, wall: grownWall })) {
        panels.push(...(yield* panelsOf(one)));
      }
      return panels;
    },
    inWords: (cost) => (job.stock.some(({ price }) => price > 0) ? costs.inWords(cost) : null),
    quickly: (panels) => ({ ...countsOf(panels), ...quickCost(panels, costs) }),
    *byPlan(panels) {
      return { ...countsOf(panels), ...(yield* costs.planCost(panels)) };
    },
  };
}

function countsOf(panels: readonly Panel[]) {
  return {
    slivers: panels.filter(({ sliver }) => sliver).length,
    cutPanels: panels.filter(({ full }) => !full).length,
    panels: panels.length,
    area: panels.reduce((sum, { outline }) => sum + polygonArea(outline), 0) / hundredthsInSquareMetre,
  };
}

const hundredthsInSquareMetre = 1e10;

function quickCost(panels: readonly Panel[], costs: PanelCosts) {
  const cut = new Map<string, CutSize[]>();
  let [stockSheets, cost] = [0, 0];
  for (const { stock, full, outline } of panels) {
    if (full) {
      stockSheets++;
      cost += costs.priceOf(stock);
    } else cut.set(stock, [...(cut.get(stock) ?? []), cutSizeOf(outline)]);
  }
  for (const [stock, sizes] of cut) {
    const count = costs.countOf(stock)(sizes);
    stockSheets += count;
    cost += count * costs.priceOf(stock);
  }
  return { stockSheets, cost };
}
