import type { StockSheet } from './schema';
import type { steelKinds } from './stock-schema';

export type SteelKind = (typeof steelKinds)[number];

/** Of which steel a stock sheet is; where it does not say, low-carbon. */
export function steelOf({ steel = 'low-carbon' }: Pick<StockSheet, 'steel'>): SteelKind {
  return steel;
}
