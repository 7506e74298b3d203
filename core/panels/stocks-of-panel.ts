import type { Layout } from '../job/schema';
import type { Panel } from './panel';

/** Ids of the stock sheets that a panel may come out of, its own first: a cut panel also out of what its zone allows. */
export function stocksOfPanel(
  { stock, full, fromStock }: Pick<Panel, 'stock' | 'full' | 'fromStock'>,
  layout: Pick<Layout, 'cutFrom'> | undefined,
): readonly string[] {
  return full || fromStock ? [stock] : [...new Set([stock, ...(layout?.cutFrom ?? [])])];
}
