/*
 * Whether a few rectangles fit on one stock sheet, by trying everything that matters.
 *
 * The sheet fills from below; what is filled is seen as a skyline, a row of level stretches:
 *
 *     ┌──────────────┐
 *     │  ┌──┐        │      The lowest stretch, the leftmost of equal ones, comes next. Either a rectangle stands
 *     ├──┘  │   ┌────┤      at its left end, or all that stand on it are pushed to the right and its left end
 *     │     └───┘    │      stays empty up to the lower of its two walls, or nothing stands on it. What stays
 *     └──────────────┘      empty must not exceed the area that is free anyway, which ends most trials early.
 *
 * Not every arrangement has this form, but almost every set of half a dozen rectangles that fits at all fits so.
 * Related: S. Martello, D. Pisinger, D. Vigo, The three-dimensional bin packing problem, Operations Research 48 (2000),
 * whose corner places follow the same idea; written from memory.
 */

/** A rectangle found a place: way 0 is lying (long side across), 1 standing. */
export interface SkylinePlaces {
  readonly kind: Int32Array;
  readonly way: Uint8Array;
  readonly x: Int32Array;
  readonly y: Int32Array;
}

export const MOST_RECTANGLES = 14;
const STRIDE = MOST_RECTANGLES + 3;

export class Skyline {
  /** Valid after `fit` said yes, in the order of placing. */
  readonly places: SkylinePlaces = {
    kind: new Int32Array(MOST_RECTANGLES),
    way: new Uint8Array(MOST_RECTANGLES),
    x: new Int32Array(MOST_RECTANGLES),
    y: new Int32Array(MOST_RECTANGLES),
  };
  /** Trials so far, ever. */
  work = 0;
  /** Whether the last `fit` was broken off. */
  brokeOff = false;

  private readonly kinds = new Int32Array(MOST_RECTANGLES);
  private readonly left = new Int32Array(MOST_RECTANGLES);
  private distinct = 0;
  private width = 0;
  private height = 0;
  private until = 0;
  /** Left ends and levels of the stretches, one row a depth. */
  private readonly xs = new Int32Array((2 * MOST_RECTANGLES + 2) * STRIDE);
  private readonly ys = new Int32Array((2 * MOST_RECTANGLES + 2) * STRIDE);

  constructor(
    private readonly long: Int32Array,
    private readonly short: Int32Array,
  ) {}

  /**
   * @param kinds, count the kinds of the rectangles, largest first, equal ones beside each other; at most MOST_RECTANGLES
   * @param spare area of the sheet less that of the rectangles, at least 0
   * @param most trials after which to give up
   */
  fit(kinds: Int32Array, count: number, width: number, height: number, spare: number, most: number): boolean {
    this.distinct = 0;
    for (let i = 0; i < count; i++) {
      const kind = kinds[i]!;
      if (this.distinct > 0 && this.kinds[this.distinct - 1] === kind) this.left[this.distinct - 1]!++;
      else {
        this.kinds[this.distinct] = kind;
        this.left[this.distinct++] = 1;
      }
    }
    this.until = this.work + most;
    const across = this.longestRow(0, width);
    const up = width === height ? across : this.longestRow(0, height);
    const rest = spare - (width * height - across * up);
    this.width = across;
    this.height = up;
    this.xs[0] = 0;
    this.ys[0] = 0;
    this.xs[1] = across;
    const fits = rest >= 0 && this.place(0, 1, 0, count, rest, false);
    this.brokeOff = this.work >= this.until;
    return fits;
  }

  /**
   * The longest row of sides within a length: no arrangement pushed to the lower left reaches farther, so that what a
   * sheet has beyond it stays empty whatever is done.
   */
  private longestRow(from: number, length: number): number {
    this.work += 0.2;
    let best = 0;
    for (let i = from; i < this.distinct; i++) {
      const kind = this.kinds[i]!;
      const count = this.left[i]!;
      for (let side = 0; side < 2; side++) {
        const own = side === 0 ? this.long[kind]! : this.short[kind]!;
        if (own > length || (side === 1 && own === this.long[kind]!)) continue;
        this.left[i]!--;
        const row = own + this.longestRow(count > 1 ? i : i + 1, length - own);
        this.left[i]!++;
        if (row > best) best = row;
        if (best === length) return best;
      }
    }
    return best;
  }

  /**
   * @param row where the skyline of this depth begins, `stretches` how many it has
   * @param placed, left rectangles that stand, and that wait
   * @param toRight nothing more may stand at the left end of the lowest stretch
   */
  private place(
    row: number,
    stretches: number,
    placed: number,
    left: number,
    spare: number,
    toRight: boolean,
  ): boolean {
    if (left === 0) return true;
    if (++this.work >= this.until) return false;
    const { xs, ys, height, long, short } = this;
    if (!this.allHaveRoom(row, stretches)) return false;
    let low = row;
    for (let i = row + 1; i < row + stretches; i++) if (ys[i]! < ys[low]!) low = i;
    const x = xs[low]!;
    const y = ys[low]!;
    const gap = xs[low + 1]! - x;
    const room = height - y;
    const isWhole = stretches === 1;
    const leftWall = low === row ? height : ys[low - 1]!;
    const rightWall = low === row + stretches - 1 ? height : ys[low + 1]!;
    const wall = leftWall < rightWall ? leftWall : rightWall;
    const next = row + STRIDE;
    // Nothing at the left end: some rectangle to the right must hold up what hangs over the empty part.
    const mayPush = toRight || (!isWhole && spare > 0);
    for (let i = 0; i < this.distinct; i++) {
      if (this.left[i]! === 0) continue;
      const kind = this.kinds[i]!;
      const a = long[kind]!;
      const b = short[kind]!;
      for (let way = a === b ? 1 : 0; way < 2; way++) {
        const w = way === 0 ? a : b;
        const h = way === 0 ? b : a;
        if (w > gap || h > room) continue;
        this.left[i]!--;
        this.places.kind[placed] = kind;
        this.places.way[placed] = way;
        this.places.y[placed] = y;
        if (!toRight) {
          this.places.x[placed] = x;
          const rest = this.raise(row, stretches, low, x, w, y + h);
          if (this.place(next, rest, placed + 1, left - 1, spare, false)) return true;
        }
        if (mayPush && w < gap && (gap - w) * ((leftWall < y + h ? leftWall : y + h) - y) <= spare) {
          this.places.x[placed] = x + gap - w;
          const rest = this.raise(row, stretches, low, x + gap - w, w, y + h);
          if (this.place(next, rest, placed + 1, left - 1, spare, true)) return true;
        }
        this.left[i]!++;
        if (this.work >= this.until) return false;
      }
    }
    if (wall >= height) return false;
    const lost = gap * (wall - y);
    if (lost > spare) return false;
    const rest = this.raise(row, stretches, low, x, gap, wall);
    return this.place(next, rest, placed, left, spare - lost, false);
  }

  /** Whether each kind that waits would find room above the skyline if it were alone. */
  private allHaveRoom(row: number, stretches: number): boolean {
    const { xs, ys, long, short, height } = this;
    const end = row + stretches;
    for (let i = 0; i < this.distinct; i++) {
      if (this.left[i]! === 0) continue;
      const a = long[this.kinds[i]!]!;
      const b = short[this.kinds[i]!]!;
      let hasRoom = false;
      for (let from = row; from < end && !hasRoom; from++) {
        let level = 0;
        for (let to = from; to < end; to++) {
          if (ys[to]! > level) level = ys[to]!;
          const h = height - level;
          if (h < b) break;
          const w = xs[to + 1]! - xs[from]!;
          if ((w >= a && h >= b) || (w >= b && h >= a)) {
            hasRoom = true;
            break;
          }
        }
      }
      if (!hasRoom) return false;
    }
    return true;
  }

  /** Writes the skyline with part of one stretch raised into the next row; returns its number of stretches. */
  private raise(row: number, stretches: number, low: number, x: number, w: number, level: number): number {
    const { xs, ys } = this;
    let to = row + STRIDE;
    const start = to;
    for (let i = row; i < low; i++, to++) {
      xs[to] = xs[i]!;
      ys[to] = ys[i]!;
    }
    const from = xs[low]!;
    const end = xs[low + 1]!;
    if (x > from) {
      xs[to] = from;
      ys[to++] = ys[low]!;
    }
    if (to > start && ys[to - 1] === level) {
      // One with the stretch before it.
    } else {
      xs[to] = x;
      ys[to++] = level;
    }
    if (x + w < end) {
      xs[to] = x + w;
      ys[to++] = ys[low]!;
    }
    for (let i = low + 1; i < row + stretches; i++) {
      if (ys[i] === ys[to - 1]) continue;
      xs[to] = xs[i]!;
      ys[to++] = ys[i]!;
    }
    xs[to] = this.width;
    return to - start;
  }
}
