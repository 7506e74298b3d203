import { countStockSheets } from '../cutting/count-stock-sheets';
import type { Job, Layout, Wall } from '../job/schema';
import { handWishes } from '../panels/by-hand/hand-wishes';
import type { LayoutRequest } from '../panels/lay-out';
import type { LineRun } from '../panels/line-run';
import { crackPlaces } from '../survey/crack-places';
import { toHundredth } from '../units';
import type { ZoneArea } from '../zones/zone-area';
import { issuedMarks } from './issued-marks';
import { panelCosts } from './panel-costs';
import { formatOf } from './stock-formats';

/** What laying out a zone asks for; undefined for a zone without steel. */
export function layoutRequest(
  job: Job,
  wall: Wall,
  area: ZoneArea,
  run?: LineRun,
): LayoutRequest | undefined {
  const { layout } = area.zone;
  const own = job.stock.find((entry) => entry.id === layout?.stock);
  if (!layout || !own) return undefined;
  const others = job.stock.filter(({ id }) => id !== own.id && layout.stocks?.includes(id));
  const byHand = job.stock.filter(
    (sheet) =>
      sheet !== own && !others.includes(sheet) && layout.byHand?.some((choice) => choice.stock === sheet.id),
  );
  const mixed = [own, ...others];
  const { method, kerf } = job.cutting;
  return {
    wallId: wall.id,
    area,
    stock: [...mixed, ...byHand],
    issued: issuedMarks(job, wall.id, area.zone.id),
    kerf: toHundredth(kerf),
    temperatures: job.temperatures,
    // Ranked by the zone's own panels: what other walls cut must not move this one's start.
    countStockSheets: (cut) => countStockSheets(cut, formatOf(job, own), method, toHundredth(kerf)),
    cracks: cracksFor(wall, area, layout),
    ...(layout.byHand && { wishes: handWishes(wall, area) }),
    ...(others.length > 0 && { costs: panelCosts(job, mixed) }),
    ...(run && { run }),
  };
}

/** Undefined where joints need not keep away from anywhere, so that a wall's other changes lay nothing out again. */
function cracksFor(wall: Wall, { box }: ZoneArea, { clearOfCorners = 0, clearOfBoardJoints = 0 }: Layout) {
  const reach = toHundredth(Math.max(clearOfCorners, clearOfBoardJoints));
  return reach > 0 ? crackPlaces(wall, box, reach) : undefined;
}
