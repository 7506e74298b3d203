import type { WorkedOut } from '../worked-out';
import { countText, massText, percentText } from './figure-text';
import { paperFigures, sizeText, type WriteLength } from './paper-figures';
import { layRows, type FlowBlock, type FlowColumn, type FlowRow } from './flow-table';
import { figuresOf, type JobFigures } from './job-figures';
import { proofText, wasteText } from './proof-text';
import type { Text, TextMeasure } from './page';
import { fitText } from './text';

const columns: readonly FlowColumn[] = [
  { heading: '', align: 'left', width: 48 },
  { heading: '', align: 'left', width: 122 },
];

/** The sums at the head of the cut list: the number to order large, its proof under it, the rest as rows. */
export function summaryOf(worked: WorkedOut, measure: TextMeasure): FlowBlock[] {
  const figures = figuresOf(worked);
  const blocks = [
    orderBlock(figures, proofText(worked), measure),
    ...layRows(columns, sumRows(figures, worked), measure),
  ];
  return [...blocks, { height: 3, at: () => [] }];
}

function orderBlock(figures: JobFigures, proof: string, measure: TextMeasure): FlowBlock {
  const { toOrder, planned, spares } = figures;
  const number = String(toOrder);
  const words = `${toOrder === 1 ? 'stock sheet' : 'stock sheets'} to order: ${planned} by the plan + ${countText(spares, 'spare')}`;
  return {
    height: 18,
    at: (left, top) => {
      const beside = left + measure(number, 10, { weight: 'semi-bold' }) + 4;
      const line = (text: string, y: number, height: Text['height'], colour: Text['colour']): Text =>
        fitText({ kind: 'text', text, at: { x: beside, y }, height, colour }, left + 170 - beside, measure);
      return [
        {
          kind: 'text',
          text: number,
          at: { x: left, y: top - 11 },
          height: 10,
          weight: 'semi-bold',
          colour: 'red-lead',
        },
        line(words, top - 4.5, 3.5, 'ink'),
        line(proof, top - 11, 2.5, 'soft'),
      ];
    },
  };
}

function sumRows(figures: JobFigures, { job }: WorkedOut): FlowRow[] {
  const { run, cut } = paperFigures(job.units);
  const row = (name: string, value: string): FlowRow => ({ kind: 'row', cells: [name, value] });
  const nameOf = (id: string) => {
    const name = job.stock.find((stock) => stock.id === id)?.name;
    return name ? `${id}, ${name}` : id;
  };
  const perStock = figures.order.map(({ stock, plan, spares, toOrder }) =>
    row(
      `Order ${stock}`,
      `${toOrder} of ${nameOf(stock)}: ${plan} by the plan + ${countText(spares, 'spare')}`,
    ),
  );
  const rack = figures.rackPieces > 0 ? [row('From the rack', countText(figures.rackPieces, 'piece'))] : [];
  return [
    ...perStock,
    ...rack,
    row('Panels', `${figures.panels}: ${figures.whole} whole, ${figures.cut} cut${sliversText(figures)}`),
    row('Waste', wasteText(figures, percentText)),
    row('Offcuts to keep', keptText(figures, cut)),
    row('Length to cut', run(figures.cutLength)),
    ...(figures.steelMass === null ? [] : [row('Steel on the wall', massText(figures.steelMass))]),
  ];
}

function sliversText({ slivers }: JobFigures): string {
  return slivers === 0 ? '' : `; ${countText(slivers, 'sliver')}`;
}

/** `2 of 500 × 250 (N8, N11); 1 of 240 × 500 (N13)`. */
function keptText({ offcutsKept }: JobFigures, write: WriteLength): string {
  const bySize = new Map<string, string[]>();
  for (const { sheet, width, height } of offcutsKept) {
    const size = sizeText(width, height, write);
    bySize.set(size, [...(bySize.get(size) ?? []), sheet]);
  }
  if (bySize.size === 0) return 'none';
  return [...bySize].map(([size, sheets]) => `${sheets.length} of ${size} (${sheets.join(', ')})`).join('; ');
}
