import { intersection, union } from '../../geometry/clip';
import {
  boxOf,
  locate,
  polygonArea,
  rectangleOfBox,
  type Box,
  type Point,
  type Polygon,
  type Region,
} from '../../geometry/polygon';
import type { StockSheet } from '../../job/schema';
import { usableSize } from '../../job/usable-size';
import type { Hundredth } from '../../units';
import { areaEdges } from '../area-edges';
import { sidesAcross } from '../joint-cells';
import { fitsStock, isAlike, type LaidPiece } from '../laid-piece';
import { cutCourse } from '../pieces';
import { seamsOf, type Seam, type SeamAxis } from '../seams';
import type { HandWish, WishOf } from './hand-wishes';
import { stripOnLine } from './start-rules';

/** Why a split or a join could not be made: its place is lost, or it would not do. */
export interface Refusal {
  readonly isLost: boolean;
  readonly why: string;
}

export interface ChangedByHand<Piece> {
  readonly parts: readonly (readonly Piece[])[];
  /** By the id of the choice. */
  readonly refused: ReadonlyMap<string, Refusal>;
  /** Pieces that were left out, with the id of the choice. */
  readonly leftOut: readonly { readonly id: string; readonly piece: Piece }[];
}

/**
 * Panels split, joined, left out or cut from another stock sheet by hand, one choice after the other, once everything else is laid: what was chosen is what
 * was seen, and nothing undoes it.
 *
 * @param parts pieces of each connected part of the zone
 * @param area of the zone: what a joint that is taken out gives back
 * @param known stock sheets that a panel may be cut from
 */
export function changeByHand(
  parts: readonly (readonly LaidPiece[])[],
  wishes: readonly HandWish[],
  area: Region,
  gap: Hundredth,
  known: readonly StockSheet[] = [],
): ChangedByHand<LaidPiece> {
  const changed = parts.map((pieces) => [...pieces]);
  const refused = new Map<string, Refusal>();
  const leftOut: { id: string; piece: LaidPiece }[] = [];
  for (const wish of wishes) {
    if (!changesPieces(wish)) continue;
    const pieces = changed.find((part) => pieceAt(part, wish.at));
    const piece = pieces && pieceAt(pieces, wish.at);
    if (!piece) {
      refused.set(wish.id, { isLost: true, why: 'no panel lies there any more' });
      continue;
    }
    if (wish.kind === 'no-panel') {
      pieces.splice(pieces.indexOf(piece), 1);
      leftOut.push({ id: wish.id, piece });
      continue;
    }
    if (wish.kind === 'other-stock') {
      const cut = fromOtherStock(piece, wish.stock, known);
      if ('polygon' in cut) pieces.splice(pieces.indexOf(piece), 1, cut);
      else refused.set(wish.id, cut);
      continue;
    }
    if (wish.kind === 'split') {
      const come = splitPiece(piece, wish.axis, wish.at, gap);
      if (Array.isArray(come)) pieces.splice(pieces.indexOf(piece), 1, ...come);
      else refused.set(wish.id, come as Refusal);
      continue;
    }
    const other = pieceAt(pieces, wish.with);
    const joined = other
      ? joinPieces(piece, other, area, gap)
      : { isLost: true, why: 'no neighbouring panel lies there any more' };
    if ('polygon' in joined) {
      pieces.splice(pieces.indexOf(piece), 1, joined);
      pieces.splice(pieces.indexOf(other!), 1);
    } else refused.set(wish.id, joined);
  }
  return { parts: changed, refused, leftOut };
}

type PieceWish = WishOf<'split' | 'join' | 'no-panel' | 'other-stock'>;

function changesPieces(wish: HandWish): wish is PieceWish {
  const { kind } = wish;
  return kind === 'split' || kind === 'join' || kind === 'no-panel' || kind === 'other-stock';
}

/** A piece cut from another stock sheet, of the same steel as the zone's, or why it cannot be. */
export function fromOtherStock(
  piece: LaidPiece,
  id: string,
  known: readonly StockSheet[],
): LaidPiece | Refusal {
  const stock = known.find((sheet) => sheet.id === id);
  if (!stock) return { isLost: true, why: `stock ${id} is gone` };
  if (!isAlike(stock, piece.stock)) {
    return {
      isLost: false,
      why: `stock ${id} is of another steel, thickness, coating or face than the panels about it`,
    };
  }
  if (!fitsStock(piece.polygon, stock))
    return { isLost: false, why: tooLarge(piece.polygon, stock, 'it is') };
  return { ...piece, stock, fromStock: true };
}

function pieceAt(pieces: readonly LaidPiece[], at: Point): LaidPiece | undefined {
  return pieces.find(({ polygon }) => locate(at, polygon) === 'inside');
}

/**
 * A piece parted along a line through a point of it, a joint gap apart: two pieces, more where the piece is notched.
 */
export function splitPiece(
  piece: LaidPiece,
  axis: SeamAxis,
  at: Point,
  gap: Hundredth,
): LaidPiece[] | Refusal {
  const { low, high } = sidesAcross[axis];
  const box = boxOf(piece.polygon.outer);
  const strip = stripOnLine(at[axis], gap);
  if (strip <= box[low] || strip + gap >= box[high]) {
    return { isLost: false, why: 'its joint would leave nothing of the panel on one side' };
  }
  const edges = areaEdges([piece.polygon]);
  const cutOut = (part: Box) =>
    cutCourse(
      [piece.polygon],
      edges,
      part.bottom,
      part.top,
    )(part).map((polygon): LaidPiece => ({
      ...piece,
      polygon,
      cell: overlapOf(piece.cell, part),
      byHand: true,
    }));
  return [...cutOut({ ...box, [high]: strip }), ...cutOut({ ...box, [low]: strip + gap })];
}

function overlapOf(a: Box, b: Box): Box {
  return {
    left: Math.max(a.left, b.left),
    bottom: Math.max(a.bottom, b.bottom),
    right: Math.min(a.right, b.right),
    top: Math.min(a.top, b.top),
  };
}

/** Two neighbouring pieces and the joint between them as one, or why they cannot be. */
export function joinPieces(
  one: LaidPiece,
  other: LaidPiece,
  area: Region,
  gap: Hundredth,
): LaidPiece | Refusal {
  if (one === other) return { isLost: true, why: 'both of its points lie in one panel' };
  const seams = seamsOf([one.polygon, other.polygon], gap);
  if (seams.length === 0) return { isLost: true, why: 'the two panels are no neighbours any more' };
  const strips = gap === 0 ? [] : seams.flatMap((seam) => stripBetween(seam, one, other, area));
  const together = union([one.polygon], [other.polygon], strips);
  const [polygon] = together;
  if (!polygon || together.length > 1)
    return { isLost: false, why: 'the two panels have no joint to take out' };
  const stock = [one.stock, other.stock]
    .sort((a, b) => usableArea(b) - usableArea(a))
    .find((sheet) => fitsStock(polygon, sheet));
  if (!stock) return { isLost: false, why: tooLarge(polygon, one.stock) };
  return {
    polygon,
    stock,
    cell: boxOf([...corners(one.cell), ...corners(other.cell)]),
    course: Math.min(one.course, other.course),
    byHand: true,
  };
}

function tooLarge(polygon: Polygon, stock: StockSheet, what = 'together they are'): string {
  const { left, right, bottom, top } = boxOf(polygon.outer);
  const { width, height } = usableSize(stock);
  const mm = (length: Hundredth) => Math.round(length / 10) / 10;
  return `${what} ${mm(right - left)} × ${mm(top - bottom)} mm, more than a stock sheet of ${mm(width)} × ${mm(height)} mm gives`;
}

/**
 * What of the area lies in the joint: all of it along the cells where these face each other evenly, which takes in
 * the joint's slanting end under a slope; else where the panels face each other.
 */
function stripBetween(seam: Seam, one: LaidPiece, other: LaidPiece, area: Region): Region {
  const { axis, at, gap } = seam;
  const { low, high, from, to } = sidesAcross[axis];
  const isEven =
    one.cell[from] === other.cell[from] && one.cell[to] === other.cell[to] && !one.byHand && !other.byHand;
  const box = {
    [low]: at,
    [high]: at + gap,
    [from]: isEven ? Math.min(...[one, other].map(({ polygon }) => boxOf(polygon.outer)[from])) : seam.from,
    [to]: isEven ? Math.max(...[one, other].map(({ polygon }) => boxOf(polygon.outer)[to])) : seam.to,
  } as unknown as Box;
  const strip = intersection(area, [rectangleOfBox(box)]);
  // Beside another piece of the same cell the joint stays.
  const reaches = ({ outer }: Polygon) => {
    const own = boxOf(outer);
    return own[from] < seam.to && own[to] > seam.from;
  };
  return strip.filter((piece) => polygonArea(piece) > 0 && reaches(piece));
}

function corners({ left, bottom, right, top }: Box): Point[] {
  return [
    { x: left, y: bottom },
    { x: right, y: top },
  ];
}

function usableArea(stock: StockSheet): number {
  const { width, height } = usableSize(stock);
  return width * height;
}
