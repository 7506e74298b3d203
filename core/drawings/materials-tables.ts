import { sentenceInUnits } from '../lengths';
import { minorUnitDigits } from '../job/minor-unit';
import type { MaterialLine } from '../quantities/material-lines';
import type { TakeOff } from '../quantities/take-off';
import type { WorkedOut } from '../worked-out';
import { csvText, type CsvRow, type CsvTable } from './csv';

const materialHeadings = [
  'group',
  'item',
  'name',
  'unit',
  'net',
  'with_loss',
  'order',
  'ordered',
  'left_over',
  'cost',
  'currency',
] as const;

const needHeadings = [
  'delivery',
  'wall',
  'zone',
  'layer',
  'kind',
  'coat',
  'for',
  'item',
  'unit',
  'net',
  'with_loss',
  'how',
] as const;

/** What is ordered, one row a thing; amounts in its unit, `order` as `2 x 10 + 1 x 2.5`, cost in the job's currency. */
export function materialsTable({ job }: Pick<WorkedOut, 'job'>, { lines }: TakeOff): CsvTable {
  const rows = lines.map((line): CsvRow => ({
    group: line.group,
    item: line.item,
    name: line.name,
    unit: line.unit,
    net: tidy(line.net),
    with_loss: tidy(line.withLoss),
    order: orderText(line),
    ordered: line.packs ? tidy(line.packs.total) : '',
    left_over: line.packs ? tidy(line.packs.leftOver) : '',
    cost: line.cost === null ? '' : Number(`${line.cost}e-${minorUnitDigits(job.currency)}`),
    currency: job.currency,
  }));
  return { name: 'materials', text: csvText(materialHeadings, rows) };
}

/** What each coat of each layer takes and how that was worked out, one row a need; layers count from 1 at the wall. */
export function needsTable({ job }: Pick<WorkedOut, 'job'>, { needs }: TakeOff): CsvTable {
  const rows = needs.map((need): CsvRow => ({
    delivery: need.delivery,
    wall: need.wall,
    zone: need.zone,
    layer: need.layer === null ? '' : need.layer + 1,
    kind: need.kind ?? '',
    coat: need.coat === 0 ? '' : need.coat,
    for: need.of,
    item: need.item,
    unit: need.unit,
    net: tidy(need.net),
    with_loss: tidy(need.withLoss),
    how: sentenceInUnits(need.how, job.units ?? 'mm'),
  }));
  return { name: 'needs', text: csvText(needHeadings, rows) };
}

function orderText({ packs }: MaterialLine): string {
  return packs?.packs.map(({ size, count }) => `${count} x ${size}`).join(' + ') ?? '';
}

/** To a millionth: what lies beyond is binary dust. */
function tidy(amount: number): number {
  return Number(amount.toFixed(6));
}
