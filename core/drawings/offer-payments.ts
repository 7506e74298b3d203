import { formatAmount } from '../offer/money';
import type { ClientPrices } from '../offer/views';
import type { Mm } from '../units';
import { layRows, type FlowBlock, type FlowRow } from './flow-table';
import type { TextMeasure } from './page';

/** When how much is due; the sum stands under it, as it must come to the total. Nothing to pay: no rows. */
export function paymentBlocks(prices: ClientPrices, width: Mm, measure: TextMeasure): FlowBlock[] {
  const { payments, gross, currency, locale } = prices;
  if (payments.length === 0) return [];
  const columns = [
    { heading: 'When', align: 'left' as const, width: width - 30 - 52 },
    { heading: 'Share', align: 'left' as const, width: 52 },
    { heading: `Amount ${currency}`, align: 'right' as const, width: 30 },
  ];
  const rows: FlowRow[] = [
    ...payments.map(({ name, basis, amount }) => ({
      kind: 'row' as const,
      cells: [name, basis, formatAmount(amount, currency, locale)],
    })),
    { kind: 'row', cells: ['Total', '', formatAmount(gross, currency, locale)], strong: true },
  ];
  return layRows(columns, rows, measure).map((block, i) => ({
    ...block,
    ...(i >= payments.length - 1 && i < payments.length && { keepWithNext: true }),
  }));
}
