/*
 * The maximal free rectangles of a stock sheet: every empty rectangle that cannot be made larger. They overlap.
 * Placing something divides each rectangle it meets into up to four, and those inside another are dropped.
 *
 * Source: J. Jylänki, A Thousand Ways to Pack the Bin (2010), section 2.5 "The Maximal Rectangles Algorithm".
 *
 * Plain growing arrays of numbers, kept between uses: this is the innermost loop of every nest.
 */

export interface FreeSpaces {
  count: number;
  left: number[];
  bottom: number[];
  right: number[];
  top: number[];
}

/** One free rectangle, the whole of it. */
export function freeSpaces(left: number, bottom: number, right: number, top: number): FreeSpaces {
  return { count: 1, left: [left], bottom: [bottom], right: [right], top: [top] };
}

/** Takes the rectangle out of the free spaces. `least`: spaces narrower than this either way are forgotten. */
export function occupy(
  free: FreeSpaces,
  left: number,
  bottom: number,
  right: number,
  top: number,
  least: number,
): void {
  const { left: L, bottom: B, right: R, top: T } = free;
  let kept = 0;
  let fresh = 0;
  const before = free.count;
  for (let i = 0; i < before; i++) {
    const l = L[i]!;
    const b = B[i]!;
    const r = R[i]!;
    const t = T[i]!;
    if (left >= r || right <= l || bottom >= t || top <= b) {
      L[kept] = l;
      B[kept] = b;
      R[kept] = r;
      T[kept++] = t;
      continue;
    }
    if (left - l >= least) fresh = note(fresh, l, b, left, t);
    if (r - right >= least) fresh = note(fresh, right, b, r, t);
    if (bottom - b >= least) fresh = note(fresh, l, b, r, bottom);
    if (t - top >= least) fresh = note(fresh, l, top, r, t);
  }
  free.count = kept;
  for (let i = 0; i < fresh; i++) {
    const at = 4 * i;
    if (!isContained(free, kept, at, fresh)) {
      L[free.count] = pieces[at]!;
      B[free.count] = pieces[at + 1]!;
      R[free.count] = pieces[at + 2]!;
      T[free.count++] = pieces[at + 3]!;
    }
  }
}

/** Pieces of divided rectangles, four numbers each; reused between calls. */
const pieces: number[] = [];

function note(fresh: number, l: number, b: number, r: number, t: number): number {
  const at = 4 * fresh;
  pieces[at] = l;
  pieces[at + 1] = b;
  pieces[at + 2] = r;
  pieces[at + 3] = t;
  return fresh + 1;
}

/** Whether piece `at` lies in a kept rectangle or in another piece (of equal ones the first stays). */
function isContained(free: FreeSpaces, kept: number, at: number, fresh: number): boolean {
  const l = pieces[at]!;
  const b = pieces[at + 1]!;
  const r = pieces[at + 2]!;
  const t = pieces[at + 3]!;
  for (let i = 0; i < kept; i++) {
    if (free.left[i]! <= l && free.bottom[i]! <= b && free.right[i]! >= r && free.top[i]! >= t) return true;
  }
  for (let other = 0; other < 4 * fresh; other += 4) {
    if (other === at) continue;
    if (
      pieces[other]! <= l &&
      pieces[other + 1]! <= b &&
      pieces[other + 2]! >= r &&
      pieces[other + 3]! >= t
    ) {
      const equal =
        pieces[other] === l && pieces[other + 1] === b && pieces[other + 2] === r && pieces[other + 3] === t;
      if (!equal || other < at) return true;
    }
  }
  return false;
}
