import type { CuttingMethod } from '../cutting/plan';
import type { WorkedOut } from '../worked-out';
import type { CutPattern } from './cut-patterns';
import type { CutStep } from './cut-steps';
import { formatMm } from './figures';
import { layHeading, layRows, type FlowBlock, type FlowColumn, type FlowRow } from './flow-table';
import type { TextMeasure } from './page';
import { sizeText, sizeWithMm, type PaperFigures, type WriteLength } from './paper-figures';
import type { PageBlock } from './page-blocks';
import type { Cutout, CutoutKind } from './panel-measures';
import { boxOf } from '../geometry/polygon';
import type { Mm } from '../units';

/** What is cut out of the panel with a mark. */
export type CutoutsOf = (mark: string) => readonly Pick<Cutout, 'kind'>[];

/** More sheets than this have their marks in a table after the sketch. */
const fewSheets = 4;

/**
 * What stands beside or under a sketch: panels, cuts in order, offcuts. Panels are left out where the sketch says all there
 * is to say of them.
 */
export function patternLists(
  pattern: CutPattern,
  steps: readonly CutStep[],
  cutoutsOf: CutoutsOf,
  method: CuttingMethod,
  isSketchComplete: boolean,
  figures: PaperFigures,
  width: Mm,
  measure: TextMeasure,
): FlowBlock[] {
  // A rounded figure in the sketch wants its mm in the list.
  const says = isSketchComplete && pattern.sheets.length === 1 && figures.units !== 'ft-in';
  const columns = cutColumns(width, method, figures);
  return [
    ...(says ? [] : table(panelColumns(width, figures), panelRows(pattern, figures), measure)),
    ...(steps.length > 0
      ? table(columns, cutRows(pattern, steps, cutoutsOf, method, figures.cut), measure)
      : []),
    ...layRows(offcutColumns(width), offcutRows(pattern, figures.cut), measure),
  ];
}

/** Feet and inches take more room than mm. */
export function listWidthFor({ units }: PaperFigures): { listWidth?: Mm } {
  return units === 'ft-in' ? { listWidth: 76 } : {};
}

/** The marks of each sheet of a pattern that many are cut by, two sheets a row. */
export function sheetRows({ number, sheets, places }: CutPattern, measure: TextMeasure): PageBlock[] {
  if (sheets.length <= fewSheets) return [];
  const columns: FlowColumn[] = [
    { heading: `Pattern ${number}`, align: 'left', width: 19 },
    { heading: 'Panels', align: 'left', width: 66 },
    { heading: 'Stock sheet', align: 'left', width: 19 },
    { heading: 'Panels', align: 'left', width: 66 },
  ];
  const cells = sheets.map(({ id }, i) => [
    id,
    places.map(({ key, marks }) => `${key} ${marks[i]!}`).join(', '),
  ]);
  const rows = Array.from({ length: Math.ceil(cells.length / 2) }, (_, i): FlowRow => {
    return { kind: 'row', cells: [...cells[2 * i]!, ...(cells[2 * i + 1] ?? [])] };
  });
  return table(columns, rows, measure).map((block) => ({ width: 'whole', ...block }));
}

function table(columns: readonly FlowColumn[], rows: readonly FlowRow[], measure: TextMeasure): FlowBlock[] {
  if (rows.length === 0) return [];
  const heading: FlowBlock = { ...layHeading(columns, measure), keepWithNext: true };
  return [heading, ...layRows(columns, rows, measure), { height: 2, at: () => [] }];
}

function panelColumns(width: Mm, { units }: PaperFigures): FlowColumn[] {
  const size = units === 'ft-in' ? 31 : 26;
  return [
    { heading: '', align: 'left', width: 6 },
    { heading: 'Panel', align: 'left', width: width - 19 - size },
    { heading: 'Width × height', align: 'left', width: size },
    { heading: 'Turned', align: 'right', width: 13 },
  ];
}

function panelRows({ places, sheets }: CutPattern, figures: PaperFigures): FlowRow[] {
  return places.map(({ key, placement, marks }) => {
    const { left, bottom, right, top } = boxOf(placement.outline.outer);
    const turns = placement.quarterTurns;
    const size =
      turns % 2 === 1
        ? sizeWithMm(top - bottom, right - left, figures)
        : sizeWithMm(right - left, top - bottom, figures);
    const named = sheets.length === 1 ? marks : marks.map((mark, i) => `${sheets[i]!.id}: ${mark}`);
    const names = sheets.length <= fewSheets ? named : ['listed below'];
    const turned = [placement.turnedOver ? 'over' : '', turns > 0 ? `${turns * 90}°` : ''].filter(Boolean);
    return { kind: 'row', cells: [key, names.join(', '), size, turned.join(', ') || '–'] };
  });
}

function cutColumns(width: Mm, method: CuttingMethod, { unit, units }: PaperFigures): FlowColumn[] {
  const wide = units === 'ft-in' ? 10 : 0;
  const figures: FlowColumn[] =
    method === 'edge-to-edge'
      ? [
          { heading: unit, align: 'right', width: 14 + wide },
          { heading: 'in hand', align: 'right', width: 14 + wide },
        ]
      : [{ heading: unit, align: 'right', width: 16 + wide }];
  const rest = width - 9 - figures.reduce((sum, column) => sum + column.width, 0);
  return [
    { heading: 'Cut', align: 'left', width: 9 },
    { heading: 'Measured from', align: 'left', width: rest },
    ...figures,
  ];
}

function cutRows(
  { places, drawn }: CutPattern,
  steps: readonly CutStep[],
  cutoutsOf: CutoutsOf,
  method: CuttingMethod,
  write: WriteLength,
): FlowRow[] {
  return steps.map((step): FlowRow => {
    const number = String(step.number);
    if (step.kind === 'open') {
      const place = places[drawn.placements.findIndex(({ mark }) => mark === step.panel)];
      const what = cutoutsText(cutoutsOf(step.panel));
      return {
        kind: 'row',
        cells: [number, `cut the ${what} of ${place?.key ?? step.panel}, see its panel sheet`, '', ''],
      };
    }
    if (step.fromEdge === null) {
      const [from, to] = [step.from, step.to].map(({ x, y }) => `${write(x)} from the left, ${write(y)} up`);
      return { kind: 'row', cells: [number, `slanted: ${from}; to ${to}`, '', ''] };
    }
    const edge = step.direction === 'upright' ? 'left edge' : 'foot';
    const inHand = write(step.onPiece ?? step.fromEdge);
    const figures = [write(step.fromEdge), ...(method === 'edge-to-edge' ? [inHand] : [])];
    return { kind: 'row', cells: [number, edge, ...figures] };
  });
}

/** `notch`; `notch and hole`; `notches and slants`. */
export function cutoutsText(cutouts: readonly Pick<Cutout, 'kind'>[]): string {
  const names: readonly (readonly [CutoutKind, string, string])[] = [
    ['notch', 'notch', 'notches'],
    ['hole', 'hole', 'holes'],
    ['slant', 'slant', 'slants'],
  ];
  const present = names.flatMap(([kind, one, many]) => {
    const count = cutouts.filter((cutout) => cutout.kind === kind).length;
    return count === 0 ? [] : [count === 1 ? one : many];
  });
  return present.length > 1
    ? `${present.slice(0, -1).join(', ')} and ${present.at(-1)!}`
    : (present[0] ?? 'shape');
}

function offcutColumns(width: Mm): FlowColumn[] {
  return [
    { heading: '', align: 'left', width: 17 },
    { heading: '', align: 'left', width: width - 17 },
  ];
}

/** Kept ones, then the rest, each size once. */
function offcutRows({ drawn, sheets }: CutPattern, write: WriteLength): FlowRow[] {
  const sizes = (keep: boolean) => {
    const own = drawn.offcuts
      .filter((offcut) => offcut.keep === keep)
      .sort((a, b) => b.width * b.height - a.width * a.height);
    return [...new Set(own.map(({ width, height }) => sizeText(width, height, write)))].map((size) => {
      const count = own.filter(({ width, height }) => sizeText(width, height, write) === size).length;
      return count === 1 ? size : `${count} of ${size}`;
    });
  };
  const kept = sizes(true);
  const small = sizes(false);
  const each = sheets.length === 1 ? '' : ' each';
  return [
    ...(kept.length > 0 ? [{ kind: 'row' as const, cells: [`Keep${each}`, kept.join(', ')] }] : []),
    ...(small.length > 0 ? [{ kind: 'row' as const, cells: ['Discard', shortened(small)] }] : []),
  ];
}

/** The largest; nobody sorts through the chips. */
function shortened(sizes: readonly string[]): string {
  const most = 6;
  const rest = sizes.length - most;
  return sizes.slice(0, most).join(', ') + (rest > 0 ? ` and ${rest} smaller` : '');
}

/** `S1 Steel 500 × 500 × 0.5`; stock without a name by its sizes. */
export function stockName(worked: WorkedOut, id: string): string {
  const stock = worked.job.stock.find((one) => one.id === id);
  if (!stock) return id;
  const sizes = [stock.width, stock.height, ...(stock.thickness === undefined ? [] : [stock.thickness])];
  return `${id} ${stock.name || sizes.map((size) => formatMm(size, 2)).join(' × ')}`;
}
