import Papa from 'papaparse';
import type { Ring } from '../geometry/polygon';
import { boxOf } from '../geometry/polygon';
import { inch, type LengthUnits } from '../lengths';
import type { WorkedOut } from '../worked-out';
import { bundlesOf, fixingPlaces } from './bundles';
import { panelMeasures } from './panel-measures';
import { panelWords } from './panel-words';
import { paperFigures, type WriteLength } from './paper-figures';
import { placedPanels, type PlacedPanel } from './placed-panels';

export interface CsvTable {
  readonly name: 'cut-list' | 'panels' | 'offcuts' | 'bundles' | 'materials' | 'needs';
  readonly text: string;
}

type Cell = string | number;

/** Hundredths of a millimetre that a unit of length has, and places that keep every one of them. */
const csvUnits: Readonly<Record<LengthUnits, { name: string; per: number; places: number }>> = {
  mm: { name: 'mm', per: 100, places: 2 },
  cm: { name: 'cm', per: 1000, places: 3 },
  m: { name: 'm', per: 1e5, places: 5 },
  'ft-in': { name: 'in', per: inch * 100, places: 4 },
};
export type CsvRow = Readonly<Record<string, Cell>>;

/**
 * The job's lists for other programs: RFC 4180, CRLF, first line the headings, figures with a decimal point, lengths
 * in the job's units (decimal inches for feet and inches) and areas in m² or ft², as the headings say, outlines as the
 * lengths. Lengths are true to 0.01 mm in every unit. Text that a spreadsheet would run as a formula is set in words
 * by a leading apostrophe; figures stay figures.
 *
 * @returns `cut-list` one row a panel as it is cut, `panels` one row a panel as it is fixed, `offcuts` one row each,
 *   `bundles` one row a panel in the order in which the bundles are made up
 */
export function csvTables(worked: WorkedOut): CsvTable[] {
  const placed = placedPanels(worked);
  const { units } = worked.job;
  const text = (columns: readonly string[], rows: readonly CsvRow[]) =>
    csvText(columns, inUnits(rows, units), units);
  return [
    {
      name: 'cut-list',
      text: text(
        cutListHeadings,
        placed.map((panel) => cutListRow(panel, paperFigures(units).cut)),
      ),
    },
    { name: 'panels', text: text(panelHeadings, placed.map(panelRow)) },
    { name: 'offcuts', text: text(offcutHeadings, offcutRows(worked)) },
    { name: 'bundles', text: text(bundleHeadings, bundleRows(worked)) },
  ];
}

const cutListHeadings = [
  'mark',
  'delivery',
  'wall',
  'zone',
  'stock',
  'stock_name',
  'width_mm',
  'height_mm',
  'area_m2',
  'cut_for',
  'cutouts',
  'placed_on',
  'from_rack',
  'x_mm',
  'y_mm',
  'quarter_turns',
  'turned_over',
] as const;

const panelHeadings = [
  'mark',
  'wall',
  'wall_name',
  'zone',
  'zone_name',
  'course',
  'whole',
  'sliver',
  'from_left_mm',
  'from_datum_mm',
  'width_mm',
  'height_mm',
  'area_m2',
  'outline_wkt',
] as const;

const offcutHeadings = [
  'sheet',
  'delivery',
  'stock',
  'x_mm',
  'y_mm',
  'width_mm',
  'height_mm',
  'area_m2',
  'keep',
] as const;

const bundleHeadings = [
  'bundle',
  'delivery',
  'room',
  'wall',
  'zone',
  'mark',
  'fixing_place',
  'closing',
  'width_mm',
  'height_mm',
  'placed_on',
  'bundle_mass_kg',
] as const;

function cutListRow(placed: PlacedPanel, write: WriteLength): CsvRow {
  const { panel, wall, zone, stock, sheet, placement } = placed;
  const measures = panelMeasures(panel, placed);
  const words = panelWords(panel, placed, write, measures);
  const spot = boxOf(placement.outline.outer);
  return {
    mark: panel.mark,
    delivery: sheet.delivery,
    wall: wall.wall.id,
    zone: zone.zone.id,
    stock: sheet.stock,
    stock_name: stock.name,
    width_mm: measures.width / 100,
    height_mm: measures.height / 100,
    area_m2: measures.area / 1e10,
    cut_for: panel.full ? '' : words.cutFor,
    cutouts: words.cutouts.join('; '),
    placed_on: sheet.id,
    from_rack: yesNo(sheet.fromRack !== null),
    x_mm: spot.left / 100,
    y_mm: spot.bottom / 100,
    quarter_turns: placement.quarterTurns,
    turned_over: yesNo(placement.turnedOver),
  };
}

function panelRow(placed: PlacedPanel): CsvRow {
  const { panel, wall, zone } = placed;
  const { at, width, height, area } = panelMeasures(panel, placed);
  return {
    mark: panel.mark,
    wall: wall.wall.id,
    wall_name: wall.wall.name,
    zone: zone.zone.id,
    zone_name: zone.zone.name,
    course: panel.course,
    whole: yesNo(panel.full),
    sliver: yesNo(panel.sliver),
    from_left_mm: at.x / 100,
    from_datum_mm: at.y / 100,
    width_mm: width / 100,
    height_mm: height / 100,
    area_m2: area / 1e10,
    outline_wkt: wellKnownText([panel.outline.outer, ...panel.outline.holes]),
  };
}

function bundleRows(worked: WorkedOut): CsvRow[] {
  const fixing = fixingPlaces(worked);
  return bundlesOf(worked).flatMap(({ number, delivery, room, panels, mass }) =>
    panels.map((placed): CsvRow => {
      const { panel, wall, zone, sheet } = placed;
      const { width, height } = panelMeasures(panel, placed);
      return {
        bundle: number,
        delivery,
        room,
        wall: wall.wall.id,
        zone: zone.zone.id,
        mark: panel.mark,
        fixing_place: fixing.get(panel.mark)?.place ?? '',
        closing: yesNo(panel.closing === true),
        width_mm: width / 100,
        height_mm: height / 100,
        placed_on: sheet.id,
        bundle_mass_kg: mass === null ? '' : Math.round(mass * 100) / 100,
      };
    }),
  );
}

function offcutRows({ cutting }: WorkedOut): CsvRow[] {
  return cutting.sheets.flatMap(({ id, delivery, stock, offcuts }) =>
    offcuts.map(({ x, y, width, height, keep }) => ({
      sheet: id,
      delivery,
      stock,
      x_mm: x / 100,
      y_mm: y / 100,
      width_mm: width / 100,
      height_mm: height / 100,
      area_m2: (width * height) / 1e10,
      keep: yesNo(keep),
    })),
  );
}

/** Wall frame. Form: OGC 06-103r4 (ISO 19125-1), clause 7, POLYGON; there the first point is repeated. */
function wellKnownText(rings: readonly Ring[]): string {
  const text = (ring: Ring) =>
    [...ring, ring[0]!].map(({ x, y }) => `${String(x / 100)} ${String(y / 100)}`).join(', ');
  return `POLYGON (${rings.map((ring) => `(${text(ring)})`).join(', ')})`;
}

/** Rows in mm and m² in the units of the job; what is written as text stays as it is. */
export function inUnits(rows: readonly CsvRow[], units: LengthUnits = 'mm'): CsvRow[] {
  if (units === 'mm') return [...rows];
  const { per, places } = csvUnits[units];
  const perSquareFoot = 12 * inch * 12 * inch;
  return rows.map((row) =>
    Object.fromEntries(
      Object.entries(row).map(([name, cell]): [string, Cell] => {
        if (name === 'outline_wkt') {
          const figure = (mm: string) => String(rounded((Number(mm) * 100) / per, places));
          return [name, String(cell).replace(/-?\d+(\.\d+)?/g, figure)];
        }
        if (typeof cell !== 'number') return [name, cell];
        if (name.endsWith('_mm')) return [name, rounded((cell * 100) / per, places)];
        if (name.endsWith('_m2') && units === 'ft-in')
          return [name, rounded((cell * 1e6) / perSquareFoot, 8)];
        return [name, cell];
      }),
    ),
  );
}

function rounded(value: number, places: number): number {
  return Number(value.toFixed(places));
}

function headingIn(heading: string, units: LengthUnits): string {
  const length = heading.replace(/_mm$/, `_${csvUnits[units].name}`);
  return units === 'ft-in' ? length.replace(/_m2$/, '_ft2') : length;
}

/** Headings that end in `_mm` or `_m2` are put into the units. */
export function csvText(
  headings: readonly string[],
  rows: readonly CsvRow[],
  units: LengthUnits = 'mm',
): string {
  const heads = headings.map((heading) => headingIn(heading, units));
  const cells = [heads, ...rows.map((row) => headings.map((heading) => neutral(row[heading]!)))];
  return `${Papa.unparse(cells as Cell[][], { newline: '\r\n' })}\r\n`;
}

/** Only text can be a formula: a negative figure is a number here and passes as it is. */
function neutral(cell: Cell): Cell {
  return typeof cell === 'string' && /^[\s]*[=+\-@\t\r\n]/.test(cell) ? `'${cell}` : cell;
}

function yesNo(value: boolean): string {
  return value ? 'yes' : 'no';
}
