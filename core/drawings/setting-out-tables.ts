import { boxOf, polygonArea, regionArea } from '../geometry/polygon';
import { buildUpKind } from '../job/build-up-kinds';
import { cornersOf } from '../geometry/arc';
import type { KeepOut } from '../survey/surveyed-wall';
import type { WorkedOut, WorkedWall } from '../worked-out';
import type { Schedule } from './deal-tables';
import { formatHundredth, formatMm, formatSquareMetres } from './figures';
import type { FittedColumn, FlowRow } from './flow-table';
import { panelWords } from './panel-words';
import { circleOf } from './setting-out-stops';

const left = (heading: string, most?: number): FittedColumn => ({
  heading,
  align: 'left',
  ...(most && { most }),
});
const right = (heading: string): FittedColumn => ({ heading, align: 'right' });

/** The rows behind a setting-out drawing: every figure that is or is not on it, by number. */
export function wallSchedules(worked: WorkedOut, wall: WorkedWall): Schedule[] {
  return [cornerSchedule(wall), objectSchedule(wall), zoneSchedule(wall), panelSchedule(worked, wall)].filter(
    ({ rows }) => rows.length > 0,
  );
}

/** Only for walls that are more than a rectangle: four corners are on the drawing. */
function cornerSchedule({ survey }: WorkedWall): Schedule {
  const corners = cornersOf(survey.outline.ring, survey.outline.arcs);
  const plain = corners.length <= 4 && survey.outline.arcs.length === 0;
  return {
    heading: 'Corners of the wall',
    columns: [left('No.'), right('from left'), right('from floor')],
    rows: plain
      ? []
      : corners.map(({ x, y }, i) => ({
          kind: 'row',
          cells: [String(i + 1), formatHundredth(x), formatHundredth(y)],
        })),
  };
}

function objectSchedule({ survey }: WorkedWall): Schedule {
  const { openings, fittings } = survey.wall;
  const rows = [...openings, ...fittings].flatMap(({ id, kind, name, clearance }): FlowRow[] => {
    const keepOut = survey.keepOuts.find((one) => one.id === id);
    if (!keepOut) return [];
    const word = kind === 'free' ? keepOut.kind : kind.replace('-', ' ');
    return [
      {
        kind: 'row',
        cells: [id, name ? `${name} (${word})` : word, ...placeCells(keepOut), formatMm(clearance)],
      },
    ];
  });
  return {
    heading: 'Openings and fittings',
    columns: [
      left('Id'),
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
function placeCells({ bare }: KeepOut): string[] {
  const circle = circleOf(bare);
  if (circle) {
    const { x, y } = circle.centre;
    return [
      `centre ${formatHundredth(x)}`,
      formatHundredth(y),
      `Ø ${formatHundredth(2 * circle.radius)}`,
      '–',
    ];
  }
  const box = boxOf(bare.ring);
  return [box.left, box.bottom, box.right - box.left, box.top - box.bottom].map((length) =>
    formatHundredth(length),
  );
}

function zoneSchedule({ zones }: WorkedWall): Schedule {
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
      right('area m²'),
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
          formatHundredth(box.left),
          formatHundredth(box.bottom),
          formatHundredth(width),
          formatHundredth(height),
          // A rectangle is square on the wall when both diagonals measure this.
          square ? formatHundredth(Math.hypot(width, height)) : '–',
          layout ? String(layout.panels.length) : '–',
          formatSquareMetres(regionArea(area.area) / 1e4),
        ],
      };
    }),
  };
}

function panelSchedule(worked: WorkedOut, { survey, zones }: WorkedWall): Schedule {
  const sheets = new Map(
    worked.cutting.sheets.flatMap(({ id, placements }) => placements.map(({ mark }) => [mark, id] as const)),
  );
  const rows = zones.flatMap(({ area, layout }) => {
    const order = new Map(layout?.fixing.order.map((mark, i) => [mark, i + 1]));
    return (layout?.panels ?? []).map((panel): FlowRow => {
      const box = boxOf(panel.outline.outer);
      const stock = worked.job.stock.find(({ id }) => id === panel.stock);
      const words = stock ? panelWords(panel, { wall: survey, zone: area, stock }).cutFor : '–';
      return {
        kind: 'row',
        cells: [
          panel.mark,
          String(order.get(panel.mark) ?? '–'),
          formatHundredth(box.left),
          formatHundredth(box.bottom),
          formatHundredth(box.right - box.left),
          formatHundredth(box.top - box.bottom),
          formatSquareMetres(polygonArea(panel.outline) / 1e4),
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
      right('area m²'),
      left('cut from'),
      left('cut for', 62),
    ],
    rows,
  };
}
