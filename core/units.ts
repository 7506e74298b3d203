/**
 * Lengths carry their unit in the type. A plain number may become either; a millimetre may not become a
 * hundredth, or the reverse, without passing through this file.
 */

/** Millimetres, as in the job file and on paper. */
export type Mm = number & { readonly unit?: 'mm' };

/** Whole hundredths of a millimetre: the integers of the clipping kernel. */
export type Hundredth = number & { readonly unit?: 'hundredth' };

/** Rounded to the nearest whole hundredth, ties away from zero, so that mirrored walls stay mirrored. */
export function toHundredth(length: Mm): Hundredth {
  return Math.sign(length) * Math.round(Math.abs(length) * 100) + 0;
}

export function toMm(length: Hundredth): Mm {
  return length / 100;
}

/** An area of the kernel (hundredths squared) in square millimetres. */
export function toSquareMm(area: number): number {
  return area / 1e4;
}
