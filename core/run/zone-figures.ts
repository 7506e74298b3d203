import { boxOfRegion, polygonArea, type Region } from '../geometry/polygon';
import { growRun, lengthOfZone } from '../job/grow-run';
import type { Job, Wall, Zone } from '../job/schema';
import { findWall } from '../job/shape';
import type { ZoneGrowth } from '../job/zone-edges';
import type { RunPart, ZoneRun } from '../job/zone-runs';
import { cutSizeOf, type CutSize } from '../panels/cut-size';
import { layOutZoneInSteps } from '../panels/lay-out';
import type { Steps } from '../panels/pace';
import type { Panel, ZoneLayout } from '../panels/panel';
import type { PanelCosts } from '../panels/panel-costs';
import { surveyWall } from '../survey/survey';
import type { SurveyedWall } from '../survey/surveyed-wall';
import type { ZoneArea } from '../zones/zone-area';
import { layoutRequest } from './layout-request';
import { foldedTo, lineRunOf, lineRuns, type LineRuns } from './line-runs';
import { panelCosts } from './panel-costs';

/** What the panels of a wall, or of the walls that a zone runs along, come to when they are cut by themselves. */
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
  /** The zone as it is; where it runs round corners, all of its length folded out flat. */
  readonly area: ZoneArea;
  /** What of the wall, or of those walls, can carry steel. */
  readonly usable: Region;
  /** Panels of the whole wall, or walls, since a zone that grows takes room from those listed after it. */
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
  // Zones that grow leave the survey as it is.
  const surveys = new Map<string, SurveyedWall>();
  const surveyed = (one: Wall): SurveyedWall => {
    let known = surveys.get(one.id);
    if (!known) surveys.set(one.id, (known = surveyWall(one)));
    return { ...known, wall: one };
  };
  const now = lineRuns(job, surveyed);
  const own = now.measure(wall).areas.find((area) => area.zone === zone)!;
  if (!layoutRequest(job, wall, own)) return null;
  const parts = lengthOfZone(job, wallId, zoneId)!;
  const costs = panelCosts(job, job.stock);

  // Zones that the growing one does not reach are laid out once.
  const known = new Map<string, ZoneLayout>();
  function* layOut(grown: Job, runs: LineRuns, one: Wall, area: ZoneArea): Steps<ZoneLayout | undefined> {
    const first = (wall: Wall, area: ZoneArea) => layOut(grown, runs, wall, area);
    const run = yield* lineRunOf(runs.runOf(one, area), one, area, runs, first);
    const request = layoutRequest(grown, one, area, run);
    if (!request) return undefined;
    const key = JSON.stringify([one.id, area.zone.id, area.box, area.area, run]);
    let layout = known.get(key);
    if (!layout) known.set(key, (layout = yield* layOutZoneInSteps(request)));
    return layout;
  }
  return {
    ...foldedPlace(parts, wall, zone, now),
    *panelsAt(growth) {
      const grown = growRun(job, wallId, zoneId, growth);
      const runs = lineRuns(grown, surveyed);
      const panels: Panel[] = [];
      for (const { wall: part } of parts) {
        const grownWall = findWall(grown, part.id)!;
        for (const area of runs.measure(grownWall).areas) {
          panels.push(...((yield* layOut(grown, runs, grownWall, area))?.panels ?? []));
        }
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

/** The zone's whole length folded out flat, in the frame of the part that is asked about. */
function foldedPlace(
  parts: ZoneRun,
  wall: Wall,
  zone: Zone,
  runs: LineRuns,
): Pick<ZoneScale, 'area' | 'usable'> {
  const own = parts.find((part) => part.wall === wall && part.zone === zone)!;
  const measured = parts.map((part) => ({ part, ...runs.measure(part.wall) }));
  const areaOf = (part: RunPart, areas: readonly ZoneArea[]) => areas.find((one) => one.zone === part.zone)!;
  const area = areaOf(own, runs.measure(wall).areas);
  if (parts.length === 1) return { area, usable: runs.measure(wall).survey.usable };
  const all = measured.flatMap(({ part, areas }) => foldedTo(part, own, areaOf(part, areas).area));
  return {
    area: all.length > 0 ? { ...area, area: all, box: boxOfRegion(all) } : area,
    usable: measured.flatMap(({ part, survey }) => foldedTo(part, own, survey.usable)),
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
