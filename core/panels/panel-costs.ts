import type { Polygon } from '../geometry/polygon';
import type { CountStockSheets } from './cut-size';
import type { Steps } from './pace';

/** A panel as buying sees it: its shape and the stock it is laid from. */
export interface PricedPanel {
  readonly outline: Polygon;
  readonly stock: string;
}

/** What panels take, cut by themselves. */
export interface PanelCost {
  /** In whole minor units of the job's currency; where no stock has a price, the area bought, mm². */
  readonly cost: number;
  readonly stockSheets: number;
}

/**
 * What stock sheets cost. Cutting is a later stage, so its answers come as functions; asked only where a zone
 * mixes formats.
 */
export interface PanelCosts {
  /** What one stock sheet costs, in the measure of `PanelCost.cost`. */
  priceOf(stock: string): number;
  /** The quick count for one stock, as for the best start. */
  countOf(stock: string): CountStockSheets;
  /** What the cutting plan of these panels costs. */
  planCost(panels: readonly PricedPanel[]): Steps<PanelCost>;
  /** A cost in words: `12.80 EUR`. */
  inWords(cost: number): string;
}
