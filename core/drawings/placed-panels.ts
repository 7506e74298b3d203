import type { Placement } from '../cutting/plan';
import type { StockSheet } from '../job/schema';
import type { Panel } from '../panels/panel';
import type { JobSheet, WorkedOut } from '../worked-out';
import type { SurveyedWall } from '../survey/surveyed-wall';
import type { ZoneArea } from '../zones/zone-area';

/** Where a panel belongs on the wall: what its words and measures are read from. */
export interface PanelPlace {
  readonly wall: SurveyedWall;
  readonly zone: ZoneArea;
  readonly stock: StockSheet;
}

/** A panel with its place on the wall and on the stock sheet it is cut from. */
export interface PlacedPanel extends PanelPlace {
  readonly panel: Panel;
  readonly sheet: JobSheet;
  readonly placement: Placement;
}

/**
 * Every panel of the job in the order of walls, zones and marks.
 *
 * @throws Error if a panel is placed on no sheet or laid from unknown stock: the work-out left it out
 */
export function placedPanels(worked: WorkedOut): PlacedPanel[] {
  const spots = new Map<string, { sheet: JobSheet; placement: Placement }>();
  for (const sheet of worked.cutting.sheets) {
    for (const placement of sheet.placements) spots.set(placement.mark, { sheet, placement });
  }
  const stocks = new Map(worked.job.stock.map((stock) => [stock.id, stock]));
  return worked.walls.flatMap(({ survey, zones }) =>
    zones.flatMap(({ area, layout }) =>
      (layout?.panels ?? []).map((panel): PlacedPanel => {
        const spot = spots.get(panel.mark);
        const stock = stocks.get(panel.stock);
        if (!spot || !stock) throw new Error(`Panel ${panel.mark} is cut from no stock sheet.`);
        return { wall: survey, zone: area, stock, panel, ...spot };
      }),
    ),
  );
}
