/*
 * The maximal free rectangles of one stock sheet in flat memory: every empty rectangle that cannot be made larger.
 * The same method as `free-spaces.ts`, for use without any allocation.
 *
 * Source: J. Jylänki, A Thousand Ways to Pack the Bin (2010), section 2.5 "The Maximal Rectangles Algorithm".
 */

export class MaximalSpaces {
  count = 0;
  /** Four numbers each: left, bottom, right, top. */
  at = new Int32Array(4 * 64);
  private pieces = new Int32Array(4 * 64);

  /** One free rectangle, the whole sheet. */
  clear(width: number, height: number): void {
    this.count = 1;
    this.at[0] = 0;
    this.at[1] = 0;
    this.at[2] = width;
    this.at[3] = height;
  }

  /** Takes a rectangle out. `least`: spaces narrower than this either way are forgotten. */
  occupy(left: number, bottom: number, right: number, top: number, least: number): void {
    const { at } = this;
    let kept = 0;
    let fresh = 0;
    for (let i = 0; i < 4 * this.count; i += 4) {
      const l = at[i]!;
      const b = at[i + 1]!;
      const r = at[i + 2]!;
      const t = at[i + 3]!;
      if (left >= r || right <= l || bottom >= t || top <= b) {
        if (kept !== i) at.copyWithin(kept, i, i + 4);
        kept += 4;
        continue;
      }
      if (left - l >= least) fresh = this.note(fresh, l, b, left, t);
      if (r - right >= least) fresh = this.note(fresh, right, b, r, t);
      if (bottom - b >= least) fresh = this.note(fresh, l, b, r, bottom);
      if (t - top >= least) fresh = this.note(fresh, l, top, r, t);
    }
    if (kept + fresh > at.length) this.at = lengthened(at, kept + fresh);
    this.keepMaximal(kept, fresh);
  }

  /** Whether the rectangle is free: if it is at all, a maximal one holds it. */
  isFree(left: number, bottom: number, right: number, top: number): boolean {
    const { at } = this;
    for (let i = 0; i < 4 * this.count; i += 4) {
      if (at[i]! <= left && at[i + 1]! <= bottom && at[i + 2]! >= right && at[i + 3]! >= top) return true;
    }
    return false;
  }

  private note(fresh: number, l: number, b: number, r: number, t: number): number {
    if (fresh + 4 > this.pieces.length) this.pieces = lengthened(this.pieces, fresh + 4);
    const { pieces } = this;
    pieces[fresh] = l;
    pieces[fresh + 1] = b;
    pieces[fresh + 2] = r;
    pieces[fresh + 3] = t;
    return fresh + 4;
  }

  /** Adds the pieces that lie in no kept rectangle and in no other piece; of equal ones the first stays. */
  private keepMaximal(kept: number, fresh: number): void {
    const { at, pieces } = this;
    let end = kept;
    for (let i = 0; i < fresh; i += 4) {
      const l = pieces[i]!;
      const b = pieces[i + 1]!;
      const r = pieces[i + 2]!;
      const t = pieces[i + 3]!;
      let isHeld = false;
      for (let k = 0; k < kept && !isHeld; k += 4) {
        isHeld = at[k]! <= l && at[k + 1]! <= b && at[k + 2]! >= r && at[k + 3]! >= t;
      }
      for (let o = 0; o < fresh && !isHeld; o += 4) {
        if (o === i) continue;
        const ol = pieces[o]!;
        const ob = pieces[o + 1]!;
        const or = pieces[o + 2]!;
        const ot = pieces[o + 3]!;
        if (ol > l || ob > b || or < r || ot < t) continue;
        isHeld = o < i || ol !== l || ob !== b || or !== r || ot !== t;
      }
      if (isHeld) continue;
      at[end] = l;
      at[end + 1] = b;
      at[end + 2] = r;
      at[end + 3] = t;
      end += 4;
    }
    this.count = end / 4;
  }
}

function lengthened(numbers: Int32Array, least: number): Int32Array<ArrayBuffer> {
  const longer = new Int32Array(Math.max(2 * numbers.length, least));
  longer.set(numbers);
  return longer;
}
