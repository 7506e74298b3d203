import { boxOf, polygonArea, regionArea } from '../geometry/polygon';
import { buildUpKind } from '../job/build-up-kinds';
import { kindInWords } from '../job/names';
import { cornersOf } from '../geometry/arc';
import type { KeepOut } from '../survey/surveyed-wall';
import { toHundredth } from '../units';
import type { WorkedOut, WorkedWall } from '../worked-out';
import { fixingSchedule } from './fixing-table';
import { groundSchedule } from './ground-table';
import { arcSchedule } from './zone-arcs';
import type { Schedule } from './deal-tables';
import type { FittedColumn, FlowRow } from './flow-table';
import { panelWords } from './panel-words';
import { exactMm, type PaperFigures, type WriteLength } from './paper-figures';
import { circleOf } from './setting-out-stops';

const left = (heading: string, most?: number): FittedColumn => ({
  heading,
  align: 'left',
  ...(most && { most }),
});
const right = (heading: string): FittedColumn => ({ heading, align: 'right' });

/** The rows behind a setting-out drawing: every figure that is or is not on it, by number. */
export function wallSchedules(worked: WorkedOut, wall: WorkedWall, figures: PaperFigures): Schedule[] {
  return [
    cornerSchedule(wall, figures),
    objectSchedule(wall, figures),
    fixingSchedule(wall, figures),
    groundSchedule(wall.survey.wall, figures),
    zoneSchedule(wall, figures),
    arcSchedule(wall, figures),
    panelSchedule(worked, wall, figures),
  ].filter(({ rows }) => rows.length > 0);
}

/** Only for walls that are more than a rectangle: four corners are on the drawing. */
function cornerSchedule({ survey }: WorkedWall, { length }: PaperFigures): Schedule {
  const corners = cornersOf(survey.outline.ring, survey.outline.arcs);
  const plain = corners.length <= 4 && survey.outline.arcs.length === 0;
  return {
    heading: 'Corners of the wall',
    columns: [left('No.'), right('from left'), right('from floor')],
    rows: plain
      ? []
      : corners.map(({ x, y }, i) => ({
          kind: 'row',
          cells: [String(i + 1), length(x), length(y)],
        })),
  };
}

function objectSchedule({ survey }: WorkedWall, { length }: PaperFigures): Schedule {
  const { openings, fittings } = survey.wall;
  const rows = [...openings, ...fittings].flatMap(({ id, kind, name, clearance }): FlowRow[] => {
    const keepOut = survey.keepOuts.find((one) => one.id === id);
    if (!keepOut) return [];
    const word = kindInWords(kind, keepOut.kind);
    return [
      {
        kind: 'row',
        cells: [
          id,
          name ? `${name} (${word})` : word,
          ...placeCells(keepOut, length),
          length(toHundredth(clearance)),
        ],
      },
    ];
  });
  return {
    heading: 'Openings and fittings',
    columns: [
      left('Mark'),
      left('What', 50),
      right('from left'),
      right('from floor'),
      right('width'),
      right('height'),
      right('clearance'),
    ],
    rows,
  };
}

/** Lower left corner and size; a round thing by its centre and diameter. */
function placeCells({ bare }: KeepOut, write: WriteLength): string[] {
  const circle = circleOf(bare);
  if (circle) {
    const { x, y } = circle.centre;
    return [`centre ${write(x)}`, write(y), `Ø ${write(2 * circle.radius)}`, '–'];
  }
  const box = boxOf(bare.ring);
  return [box.left, box.bottom, box.right - box.left, box.top - box.bottom].map((length) => write(length));
}

function zoneSchedule({ zones }: WorkedWall, { length, area: areaOf, areaUnit }: PaperFigures): Schedule {
  return {
    heading: 'Zones',
    columns: [
      left('Zone', 45),
      left('Build-up', 50),
      right('from left'),
      right('from floor'),
      right('width'),
      right('height'),
      right('diagonal'),
      right('panels'),
      right(`area ${areaUnit}`),
    ],
    rows: zones.map(({ area, layout }) => {
      const { box, zone } = area;
      const width = box.right - box.left;
      const height = box.top - box.bottom;
      const square = area.shape.ring.length === 4 && polygonArea(area.shapePolygon) === width * height;
      return {
        kind: 'row',
        cells: [
          [zone.id, zone.name].filter(Boolean).join(' '),
          buildUpKind(zone.buildUp).label,
          length(box.left),
          length(box.bottom),
          length(width),
          length(height),
          // A rectangle is square on the wall when both diagonals measure this.
          square ? length(Math.hypot(width, height)) : '–',
          layout ? String(layout.panels.length) : '–',
          areaOf(regionArea(area.area)),
        ],
      };
    }),
  };
}

function panelSchedule(worked: WorkedOut, { survey, zones }: WorkedWall, figures: PaperFigures): Schedule {
  const sheets = new Map(
    worked.cutting.sheets.flatMap(({ id, placements }) => placements.map(({ mark }) => [mark, id] as const)),
  );
  const inFeet = figures.units === 'ft-in';
  const rows = zones.flatMap(({ area, layout }) => {
    const order = new Map(layout?.fixing.order.map((mark, i) => [mark, i + 1]));
    return (layout?.panels ?? []).map((panel): FlowRow => {
      const box = boxOf(panel.outline.outer);
      const stock = worked.job.stock.find(({ id }) => id === panel.stock);
      const words = stock ? panelWords(panel, { wall: survey, zone: area, stock }, figures.cut).cutFor : '–';
      return {
        kind: 'row',
        cells: [
          panel.mark,
          String(order.get(panel.mark) ?? '–'),
          figures.length(box.left),
          figures.length(box.bottom),
          figures.length(box.right - box.left),
          figures.length(box.top - box.bottom),
          ...(inFeet ? [exactMm(box.right - box.left, box.top - box.bottom, figures.units)] : []),
          figures.area(polygonArea(panel.outline)),
          sheets.get(panel.mark) ?? '–',
          panel.full ? 'whole stock sheet' : words,
        ],
        strong: !panel.full,
      };
    });
  });
  return {
    heading: 'Panels, cut ones in bold',
    columns: [
      left('Panel'),
      right('fix as no.'),
      right('from left'),
      right('from floor'),
      right('width'),
      right('height'),
      ...(inFeet ? [right('exactly')] : []),
      right(`area ${figures.areaUnit}`),
      left('cut from'),
      left('cut for', 62),
    ],
    rows,
  };
}
