import { cutSizeOf, type CutSize } from './cut-size';
import { isWholeStock, type LaidPiece } from './laid-piece';
import type { PanelCosts } from './panel-costs';
import { isSliver } from './sliver';
import type { Hundredth } from '../units';

/** A piece with all that comparing many layouts asks of it, worked out once. */
export interface WeighedPiece extends LaidPiece {
  readonly size: CutSize;
  readonly whole: boolean;
  readonly sliver: boolean;
}

/** What a layout comes to, before the cutter has been asked. */
export interface QuickFigures {
  readonly cost: number;
  readonly slivers: number;
  readonly cut: number;
  readonly panels: number;
}

export function weighPiece(piece: LaidPiece, leastWidth: Hundredth): WeighedPiece {
  return {
    ...piece,
    size: cutSizeOf(piece.polygon),
    whole: isWholeStock(piece.polygon, piece.stock),
    sliver: isSliver(piece.polygon, leastWidth),
  };
}

/** Cost by the quick count of each stock's cut panels. */
export function quickFigures(pieces: readonly WeighedPiece[], costs: PanelCosts): QuickFigures {
  const cutOf = new Map<string, CutSize[]>();
  let [cost, slivers, cut] = [0, 0, 0];
  for (const { stock, whole, sliver, size } of pieces) {
    if (sliver) slivers++;
    if (whole) {
      cost += costs.priceOf(stock.id);
      continue;
    }
    cut++;
    const sizes = cutOf.get(stock.id);
    if (sizes) sizes.push(size);
    else cutOf.set(stock.id, [size]);
  }
  for (const [stock, sizes] of cutOf) cost += costs.countOf(stock)(sizes) * costs.priceOf(stock);
  return { cost, slivers, cut, panels: pieces.length };
}
