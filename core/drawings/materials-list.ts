import { minorUnitDigits } from '../job/minor-unit';
import type { MaterialLine } from '../quantities/material-lines';
import { materialGroups } from '../quantities/material-lines';
import type { TakeOff } from '../quantities/take-off';
import type { WorkedOut } from '../worked-out';
import { amountText } from './amount-text';
import { cautions } from './cautions';
import {
  dealOut,
  layHeading,
  layRows,
  stack,
  type FlowBlock,
  type FlowColumn,
  type FlowRow,
} from './flow-table';
import { mixingRows, mixingColumns } from './mixing-rows';
import type { LodeplanDocument, TextMeasure } from './page';
import { placeColumns, placeRows } from './materials-by-place';
import { tradePage, upright, type TradeDocument } from './trade-page';

const name = 'materials-list';

/**
 * What the merchant is to deliver, by group, rounded up to packs; then where it goes, zone by zone, with how each amount
 * was worked out; then how two-component products are mixed. No pages where a job takes nothing.
 *
 * @param takeOff of the same job
 */
export function materialsList(worked: WorkedOut, takeOff: TakeOff, measure: TextMeasure): LodeplanDocument {
  const { job } = worked;
  const title = `${job.name}: materials list`;
  if (takeOff.lines.length === 0) return { name, title, pages: [] };
  const document: TradeDocument = {
    job,
    title: 'Materials list',
    documentType: 'Materials list',
    notes: notesOf(worked, takeOff),
    cautions: [
      ...(takeOff.lines.some(({ group }) => group === 'steel') ? [cautions.edges] : []),
      ...(takeOff.mixing.length > 0 ? [cautions.twoComponent] : []),
      cautions.dust,
    ],
  };
  const tables: readonly Table[] = [
    { columns: orderColumns, rows: orderRows(worked, takeOff) },
    { columns: placeColumns, rows: placeRows(worked, takeOff) },
    { columns: mixingColumns, rows: mixingRows(worked, takeOff) },
  ];
  const pages = pagesOf(
    tables.filter(({ rows }) => rows.length > 0),
    document,
    measure,
  );
  return {
    name,
    title,
    pages: pages.map((blocks, i) => {
      const { items, space } = tradePage(document, i + 1, pages.length, measure);
      return upright([...items, ...stack(blocks, space.left, space.top)]);
    }),
  };
}

interface Table {
  readonly columns: readonly FlowColumn[];
  readonly rows: readonly FlowRow[];
}

/** Each table begins on a page of its own and repeats its heading on every page. */
function pagesOf(tables: readonly Table[], document: TradeDocument, measure: TextMeasure): FlowBlock[][] {
  const room = (sheet: number) => {
    const { top, bottom } = tradePage(document, sheet, 2, measure).space;
    return top - bottom;
  };
  return tables.flatMap(({ columns, rows }, i) => {
    const heading = layHeading(columns, measure);
    const blocks = layRows(columns, rows, measure);
    const next = room(2) - heading.height;
    return dealOut(blocks, next, i === 0 ? room(1) - heading.height : next).map((own) =>
      own.length > 0 ? [heading, ...own] : [],
    );
  });
}

const orderColumns: readonly FlowColumn[] = [
  { heading: 'Material', align: 'left', width: 55 },
  { heading: 'On the wall', align: 'right', width: 23 },
  { heading: 'With loss', align: 'right', width: 23 },
  { heading: 'Order', align: 'left', width: 33 },
  { heading: 'Left over', align: 'right', width: 19 },
  { heading: 'Cost', align: 'right', width: 17 },
];

function orderRows({ job }: WorkedOut, { lines, cost, isWholeCost }: TakeOff): FlowRow[] {
  const groups = materialGroups.flatMap((group): FlowRow[] => {
    const own = lines.filter((line) => line.group === group);
    if (own.length === 0) return [];
    const heading: FlowRow = { kind: 'group', text: group.charAt(0).toUpperCase() + group.slice(1) };
    return [heading, ...own.map((line) => orderRow(line, job.currency))];
  });
  const sum: FlowRow = {
    kind: 'row',
    strong: true,
    cells: [
      isWholeCost ? 'All materials' : 'Materials of known price',
      '',
      '',
      '',
      '',
      moneyText(cost, job.currency),
    ],
  };
  return cost > 0 ? [...groups, sum] : groups;
}

function orderRow(line: MaterialLine, currency: string): FlowRow {
  const { unit, packs } = line;
  const isSheet = line.stock !== undefined;
  const words = (amount: number) => (isSheet ? String(amount) : amountText(amount, unit));
  const order = isSheet
    ? `${line.withLoss} ${line.withLoss === 1 ? 'sheet' : 'sheets'}`
    : packs?.packs.map(({ size, count }) => `${count} × ${amountText(size, unit)}`).join(', ');
  return {
    kind: 'row',
    cells: [
      line.name,
      words(line.net),
      words(line.withLoss),
      order || '–',
      packs ? words(packs.leftOver) : '–',
      line.cost === null ? '–' : moneyText(line.cost, currency),
    ],
  };
}

function moneyText(minor: number, currency: string): string {
  const digits = minorUnitDigits(currency);
  return (minor / 10 ** digits).toFixed(digits).replace('.', ',');
}

function notesOf({ job }: WorkedOut, { lines, cost }: TakeOff): string[] {
  return [
    'Amounts follow from the true areas, openings out. Loss is what does not stay on the wall; of film, what its plan of strips leaves. Of steel it is the spares.',
    ...(cost > 0 ? [`Cost in ${job.currency}, as bought, without tax.`] : []),
    ...(lines.some(({ typical }) => typical)
      ? ['Some products have typical values: put those of their data sheets in their place before ordering.']
      : []),
    ...(lines.some(({ packs }) => packs && !packs.exact)
      ? ['Of very large amounts the packs are close to the cheapest, not proven so.']
      : []),
  ];
}
