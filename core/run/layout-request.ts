import { countStockSheets } from '../cutting/count-stock-sheets';
import type { Job, Wall } from '../job/schema';
import type { LayoutRequest } from '../panels/lay-out';
import { toHundredth } from '../units';
import type { ZoneArea } from '../zones/zone-area';
import { issuedMarks } from './issued-marks';
import { panelCosts } from './panel-costs';
import { formatOf } from './stock-formats';

/** What laying out a zone asks for; undefined for a zone without steel. */
export function layoutRequest(job: Job, wall: Wall, area: ZoneArea): LayoutRequest | undefined {
  const { layout } = area.zone;
  const own = job.stock.find((entry) => entry.id === layout?.stock);
  if (!layout || !own) return undefined;
  const others = job.stock.filter(({ id }) => id !== own.id && layout.stocks?.includes(id));
  const stock = [own, ...others];
  const { method, kerf } = job.cutting;
  return {
    wallId: wall.id,
    area,
    stock,
    issued: issuedMarks(job, wall.id, area.zone.id),
    kerf: toHundredth(kerf),
    // Ranked by the zone's own panels: what other walls cut must not move this one's start.
    countStockSheets: (cut) => countStockSheets(cut, formatOf(job, own), method, toHundredth(kerf)),
    ...(others.length > 0 && { costs: panelCosts(job, stock) }),
  };
}
