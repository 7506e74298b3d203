import { panelWords } from '../../core/drawings/panel-words';
import { boxOf, polygonArea } from '../../core/geometry/polygon';
import type { Panel } from '../../core/panels/panel';
import type { JobSheet, WorkedOut, WorkedWall, WorkedZone } from '../../core/worked-out';
import { areaFigure, hundredthFigure, withPoint } from '../look/figures';

/** A row of the panels' schedule before its words are asked for; lengths in hundredths, wall frame. */
export interface PanelRow {
  readonly panel: Panel;
  readonly wall: WorkedWall;
  readonly zone: WorkedZone;
  /** The number that is painted on it, "07" of "A-Z1-07". */
  readonly number: string;
  /** Which in the order of fixing; of its zone. */
  readonly fixedAs: number;
  readonly fromLeft: number;
  readonly fromFloor: number;
  readonly width: number;
  readonly height: number;
  readonly area: string;
  /** What it is cut from: "whole", "N13", "N13, 2 from one", "R2 from the rack". */
  readonly sheet: string;
}

/** Every panel of a wall in the order of its zones and marks. */
export function panelRows(worked: WorkedOut, wallId: string): PanelRow[] {
  const wall = worked.walls.find(({ survey }) => survey.wall.id === wallId);
  if (!wall) return [];
  const sheets = sheetsByMark(worked);
  return wall.zones.flatMap((zone) => {
    const order = new Map(zone.layout?.fixing.order.map((mark, i) => [mark, i + 1]));
    return (zone.layout?.panels ?? []).map((panel): PanelRow => {
      const { left, bottom, right, top } = boxOf(panel.outline.outer);
      return {
        panel,
        wall,
        zone,
        number: panel.mark.split('-').at(-1)!,
        fixedAs: order.get(panel.mark) ?? 0,
        fromLeft: left,
        fromFloor: bottom,
        width: right - left,
        height: top - bottom,
        area: areaFigure(polygonArea(panel.outline)),
        sheet: sheetInWords(panel, sheets.get(panel.mark)),
      };
    });
  });
}

/** Why the panel is cut, and where its notches and holes sit; worked out only for rows that are on the screen. */
export function rowInWords(
  { panel, wall, zone }: PanelRow,
  worked: WorkedOut,
): { cutFor: string; note: string } {
  const stock = worked.job.stock.find(({ id }) => id === panel.stock);
  if (!stock) return { cutFor: '', note: '' };
  const place = { wall: wall.survey, zone: zone.area, stock };
  const { cutFor, cutouts } = panelWords(panel, place, hundredthFigure);
  const notes = [...(panel.sliver ? ['sliver: narrower than the least width'] : []), ...cutouts];
  return { cutFor: withPoint(cutFor), note: withPoint(notes.join('; ')) };
}

function sheetsByMark(worked: WorkedOut): Map<string, JobSheet> {
  return new Map(
    worked.cutting.sheets.flatMap((sheet) => sheet.placements.map(({ mark }) => [mark, sheet] as const)),
  );
}

function sheetInWords(panel: Panel, sheet: JobSheet | undefined): string {
  if (!sheet) return '…';
  if (panel.full && sheet.fromRack === null) return `${sheet.id}, whole`;
  const place = sheet.fromRack === null ? sheet.id : `${sheet.id} from the rack`;
  return sheet.placements.length > 1 ? `${place}, ${sheet.placements.length} from one` : place;
}
