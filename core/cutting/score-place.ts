import type { Boxes } from './separable';
import type { Pose } from './kinds';

/**
 * How good a place is; the larger the better. `contact`: length of the panel's sides that touch the stock sheet's
 * edge or a neighbour; `area`, `short-side`, `long-side`: little left over of the free rectangle, by its area,
 * along the side that leaves less, along the one that leaves more; `bottom-left`: low.
 *
 * Source: J. Jylänki, A Thousand Ways to Pack the Bin (2010): "Contact Point", "Best Area Fit", "Best Short
 * Side Fit", "Best Long Side Fit", "Bottom-Left".
 */
export type Score = 'contact' | 'area' | 'short-side' | 'long-side' | 'bottom-left';

/** A place on trial: where, and what would be left of the free rectangle across and up. Kerf included. */
export interface Trial {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly spareX: number;
  readonly spareY: number;
}

/** The score, except for contact. */
export function fitValue(score: Score, { y, width, height, spareX, spareY }: Trial): number {
  if (score === 'area') return -((spareX + width) * (spareY + height));
  if (score === 'short-side') return -Math.min(spareX, spareY);
  if (score === 'long-side') return -Math.max(spareX, spareY);
  return -(y + height);
}

/** Decides between equal scores. */
export function tieValue(score: Score, { x, spareX, spareY }: Trial): number {
  if (score === 'short-side') return -Math.max(spareX, spareY);
  return score === 'bottom-left' ? -x : -Math.min(spareX, spareY);
}

/** Touching lengths of everything a panel takes at x, y. `asBox`: its box, otherwise what covers it. */
export function contactAt(
  boxes: Boxes,
  width: number,
  height: number,
  pose: Pose,
  x: number,
  y: number,
  kerf: number,
  asBox: boolean,
): number {
  if (asBox || pose.cover.length === 1) {
    return contactOfBox(boxes, width, height, x, y, x + pose.width + kerf, y + pose.height + kerf);
  }
  let contact = 0;
  for (const [left, bottom, right, top] of pose.cover) {
    contact += contactOfBox(boxes, width, height, x + left, y + bottom, x + right + kerf, y + top + kerf);
  }
  return contact;
}

function contactOfBox(
  { count, left: L, bottom: B, right: R, top: T }: Boxes,
  width: number,
  height: number,
  left: number,
  bottom: number,
  right: number,
  top: number,
): number {
  let contact = 0;
  if (left === 0) contact += top - bottom;
  if (bottom === 0) contact += right - left;
  if (right === width) contact += top - bottom;
  if (top === height) contact += right - left;
  for (let i = 0; i < count; i++) {
    if (L[i] === right || R[i] === left) {
      const shared = Math.min(T[i]!, top) - Math.max(B[i]!, bottom);
      if (shared > 0) contact += shared;
    }
    if (B[i] === top || T[i] === bottom) {
      const shared = Math.min(R[i]!, right) - Math.max(L[i]!, left);
      if (shared > 0) contact += shared;
    }
  }
  return contact;
}
