import { boxOf, type Polygon } from '../geometry/polygon';
import type { StockSheet } from '../job/schema';
import { steelOf } from '../job/steel-kind';
import { usableSize } from '../job/usable-size';
import type { Hundredth } from '../units';
import type { Piece } from './pieces-of-grid';

/** A piece of an area, and the stock sheet it is laid from. */
export interface LaidPiece extends Piece {
  readonly stock: StockSheet;
  /** Split or joined by hand: its sides need not be those of its cell. */
  readonly byHand?: boolean;
  /** Its stock sheet was chosen by hand, and no other will do. */
  readonly fromStock?: boolean;
}

/** Whether a piece comes out of a stock sheet, either way round: its bounding rectangle does. */
export function fitsStock(piece: Polygon, stock: StockSheet): boolean {
  const { width, height } = sidesOf(piece);
  const { width: across, height: up } = usableSize(stock);
  return (width <= across && height <= up) || (height <= across && width <= up);
}

/** Whether a piece is a whole stock sheet, either way round. */
export function isWholeStock(piece: Polygon, stock: StockSheet): boolean {
  if (piece.outer.length !== 4 || piece.holes.length > 0) return false;
  const { width, height } = sidesOf(piece);
  const { left, right, bottom, top } = boxOf(piece.outer);
  const isBox = piece.outer.every(({ x, y }) => (x === left || x === right) && (y === bottom || y === top));
  const { width: across, height: up } = usableSize(stock);
  return isBox && ((width === across && height === up) || (height === across && width === up));
}

/** Whether two stock sheets are of one steel, so that their panels can lie side by side. */
export function isAlike(one: StockSheet, other: StockSheet): boolean {
  return (
    one.thickness === other.thickness &&
    steelOf(one) === steelOf(other) &&
    one.coating === other.coating &&
    one.hasFace === other.hasFace
  );
}

/** In the order in which a fitter reads a wall: courses from below, each from left to right, then from below. */
export function inReadingOrder<One extends LaidPiece>(pieces: readonly One[]): One[] {
  return pieces
    .map((piece) => ({ piece, box: boxOf(piece.polygon.outer) }))
    .sort((a, b) => a.piece.course - b.piece.course || a.box.left - b.box.left || a.box.bottom - b.box.bottom)
    .map(({ piece }) => piece);
}

export function sidesOf(piece: Polygon): { readonly width: Hundredth; readonly height: Hundredth } {
  const { left, bottom, right, top } = boxOf(piece.outer);
  return { width: right - left, height: top - bottom };
}
