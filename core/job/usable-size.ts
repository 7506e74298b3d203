import { toHundredth, type Hundredth } from '../units';
import type { StockSheet, Trim } from './schema';

export interface StockSize {
  readonly width: Hundredth;
  readonly height: Hundredth;
}

export type HundredthTrim = { readonly [side in keyof Trim]: Hundredth };

/** What is left of a stock sheet once its margins are cut off: what panels are laid and cut from. */
export function usableSize(stock: Pick<StockSheet, 'width' | 'height' | 'trim'>): StockSize {
  const { left, right, bottom, top } = trimOf(stock);
  return {
    width: toHundredth(stock.width) - left - right,
    height: toHundredth(stock.height) - bottom - top,
  };
}

/** The margins cut off a stock sheet before anything else; 0 where nothing is. */
export function trimOf({ trim }: Pick<StockSheet, 'trim'>): HundredthTrim {
  return {
    left: toHundredth(trim?.left ?? 0),
    right: toHundredth(trim?.right ?? 0),
    bottom: toHundredth(trim?.bottom ?? 0),
    top: toHundredth(trim?.top ?? 0),
  };
}

/** The same stock sheet as bought, or cut to size and without margins. */
export function hasTrim(stock: Pick<StockSheet, 'trim'>): boolean {
  return Object.values(trimOf(stock)).some((margin) => margin > 0);
}
