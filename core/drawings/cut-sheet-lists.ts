import type { WorkedOut } from '../worked-out';
import type { CutPattern } from './cut-patterns';
import type { CutStep } from './cut-steps';
import { sizeText } from './figure-text';
import { formatHundredth, formatMm } from './figures';
import { layHeading, layRows, type FlowBlock, type FlowColumn, type FlowRow } from './flow-table';
import type { TextMeasure } from './page';
import { boxOf } from '../geometry/polygon';
import type { Mm } from '../units';

/** What stands beside a sketch in a column of `width` (60 mm or more): panels, cuts in order, offcuts. */
export function patternLists(
  pattern: CutPattern,
  steps: readonly CutStep[],
  width: Mm,
  measure: TextMeasure,
): FlowBlock[] {
  const table = (columns: readonly FlowColumn[], rows: readonly FlowRow[]): FlowBlock[] =>
    rows.length === 0 ? [] : [layHeading(columns, measure), ...layRows(columns, rows, measure), space(2)];
  return [
    ...table(panelColumns(width), panelRows(pattern)),
    ...table(cutColumns(width), cutRows(pattern, steps)),
    ...table(offcutColumns(width), offcutRows(pattern)),
  ];
}

function panelColumns(width: Mm): FlowColumn[] {
  return [
    { heading: '', align: 'left', width: 6 },
    { heading: 'Panel', align: 'left', width: width - 45 },
    { heading: 'Width × height', align: 'left', width: 26 },
    { heading: 'Turned', align: 'right', width: 13 },
  ];
}

function panelRows({ places, sheets }: CutPattern): FlowRow[] {
  return places.map(({ key, placement, marks }) => {
    const { left, bottom, right, top } = boxOf(placement.outline.outer);
    const turns = placement.quarterTurns;
    const size =
      turns % 2 === 1 ? sizeText(top - bottom, right - left) : sizeText(right - left, top - bottom);
    const names = sheets.length === 1 ? marks : marks.map((mark, i) => `${sheets[i]!.id}: ${mark}`);
    const turned = [placement.turnedOver ? 'over' : '', turns > 0 ? `${turns * 90}°` : ''].filter(Boolean);
    return { kind: 'row', cells: [key, names.join(', '), size, turned.join(', ') || '–'] };
  });
}

function cutColumns(width: Mm): FlowColumn[] {
  return [
    { heading: 'Cut', align: 'left', width: 9 },
    { heading: 'Measured from', align: 'left', width: width - 35 },
    { heading: 'mm', align: 'right', width: 13 },
    { heading: 'In hand', align: 'right', width: 13 },
  ];
}

function cutRows({ places, drawn }: CutPattern, steps: readonly CutStep[]): FlowRow[] {
  return steps.map((step): FlowRow => {
    const number = String(step.number);
    if (step.kind === 'open') {
      const place = places[drawn.placements.findIndex(({ mark }) => mark === step.panel)];
      return {
        kind: 'row',
        cells: [number, `open the cutouts of ${place?.key ?? step.panel}, see its panel sheet`, '', ''],
      };
    }
    if (step.fromEdge === null) {
      const [from, to] = [step.from, step.to].map(
        ({ x, y }) => `${formatHundredth(x)} | ${formatHundredth(y)}`,
      );
      return { kind: 'row', cells: [number, `slanted, ${from} to ${to} from the left | the foot`, '', ''] };
    }
    const edge = step.direction === 'upright' ? 'left edge' : 'foot';
    const inHand = step.onPiece === null ? '' : formatHundredth(step.onPiece);
    return { kind: 'row', cells: [number, edge, formatHundredth(step.fromEdge), inHand] };
  });
}

function offcutColumns(width: Mm): FlowColumn[] {
  return [
    { heading: 'Offcut', align: 'left', width: 30 },
    { heading: '', align: 'left', width: width - 30 },
  ];
}

/** Kept ones each, the rest together. */
function offcutRows({ drawn, sheets }: CutPattern): FlowRow[] {
  const name = drawn.fromRack ?? drawn.id;
  const marked = sheets.length === 1 ? `keep, mark it ${name}` : 'keep from each, mark it with its sheet';
  const kept = drawn.offcuts.filter(({ keep }) => keep);
  const small = drawn.offcuts.filter(({ keep }) => !keep);
  const rows = kept.map(({ width, height }): FlowRow => ({
    kind: 'row',
    cells: [sizeText(width, height), marked],
  }));
  if (small.length > 0) {
    const sizes = [...new Set(small.map(({ width, height }) => sizeText(width, height)))];
    rows.push({
      kind: 'row',
      cells: [sizes.slice(0, 6).join(', ') + (sizes.length > 6 ? ' …' : ''), 'discard'],
    });
  }
  return rows;
}

function space(height: Mm): FlowBlock {
  return { height, at: () => [] };
}

/** `S1 Steel 500 × 500 × 0.5`; stock without a name by its sizes. */
export function stockName(worked: WorkedOut, id: string): string {
  const stock = worked.job.stock.find((one) => one.id === id);
  if (!stock) return id;
  const sizes = [stock.width, stock.height, ...(stock.thickness === undefined ? [] : [stock.thickness])];
  return `${id} ${stock.name || sizes.map((size) => formatMm(size, 2)).join(' × ')}`;
}
