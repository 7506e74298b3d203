import { freeSpaces, occupy, type FreeSpaces } from './free-spaces';

/** A rectangle to be cut. */
export interface Side {
  readonly long: number;
  readonly short: number;
}

export interface FillTask {
  /** Of the stock sheet, a kerf added, as to every panel: so kerf is lost between panels and never at the edge. */
  readonly width: number;
  readonly height: number;
  readonly kerf: number;
}

/** Rectangles in the order given, each into the tightest place that is left: how many stock sheets they take. */
export type Fill = (sides: readonly Side[], task: FillTask) => { sheets: number; last: Side[] };

/**
 * Every cut right across the piece. Only the sizes of pieces matter, not where on the stock sheet they are.
 *
 * @param keepsLarge the larger leftover stays as large as it can; else as small
 * @param everywhere the tightest place of all stock sheets; else of the first that has one
 */
export function fillEdgeToEdge({
  keepsLarge,
  everywhere,
}: {
  readonly keepsLarge: boolean;
  readonly everywhere: boolean;
}): Fill {
  return (sides, { width, height, kerf }) => {
    let count = 0;
    let sheets = 0;
    let last: Side[] = [];
    const add = (w: number, h: number, sheet: number) => {
      if (w <= kerf || h <= kerf) return;
      widths[count] = w;
      heights[count] = h;
      onSheet[count++] = sheet;
    };
    for (const side of sides) {
      const long = side.long + kerf;
      const short = side.short + kerf;
      let best = -1;
      let bestSpare = Infinity;
      let lies = false;
      for (let i = 0; i < count; i++) {
        if (!everywhere && best >= 0 && onSheet[i]! > onSheet[best]!) continue;
        const w = widths[i]!;
        const h = heights[i]!;
        const lying = w >= long && h >= short ? Math.min(w - long, h - short) : Infinity;
        const standing = w >= short && h >= long ? Math.min(w - short, h - long) : Infinity;
        const spare = Math.min(lying, standing);
        const isSooner = !everywhere && best >= 0 && onSheet[i]! < onSheet[best]!;
        if (spare < bestSpare || (isSooner && spare < Infinity)) {
          best = i;
          bestSpare = spare;
          lies = lying <= standing;
        }
      }
      if (best < 0) {
        best = count;
        last = [];
        add(width, height, sheets++);
        lies = liesTighter(width, height, long, short);
      }
      const sheet = onSheet[best]!;
      if (sheet === sheets - 1) last.push(side);
      const w = widths[best]!;
      const h = heights[best]!;
      count--;
      widths[best] = widths[count]!;
      heights[best] = heights[count]!;
      onSheet[best] = onSheet[count]!;
      const across = lies ? long : short;
      const up = lies ? short : long;
      if ((w - across) * h >= (h - up) * w === keepsLarge) {
        add(w - across, h, sheet);
        add(across, h - up, sheet);
      } else {
        add(w, h - up, sheet);
        add(w - across, up, sheet);
      }
    }
    return { sheets, last };
  };
}

/** Whether a rectangle leaves less over along one side of a stock sheet when it lies than when it stands. */
function liesTighter(width: number, height: number, long: number, short: number): boolean {
  if (width < long || height < short) return false;
  return (
    width < short ||
    height < long ||
    Math.min(width - long, height - short) <= Math.min(width - short, height - long)
  );
}

/** The pieces that are left, kept between fills: this is the innermost loop of every search for a start. */
const widths: number[] = [];
const heights: number[] = [];
const onSheet: number[] = [];

/** Any cuts: each rectangle in a corner of the largest free rectangles. */
export function fillFreely({ everywhere }: { readonly everywhere: boolean }): Fill {
  return (sides, { width, height, kerf }) => {
    let sheets = 0;
    let last: Side[] = [];
    for (const side of sides) {
      const long = side.long + kerf;
      const short = side.short + kerf;
      let sheet = -1;
      let best = -1;
      let bestSpare = Infinity;
      let lies = false;
      for (let s = 0; s < sheets && (everywhere || sheet < 0); s++) {
        const { count, left, bottom, right, top } = pool[s]!;
        for (let i = 0; i < count; i++) {
          const w = right[i]! - left[i]!;
          const h = top[i]! - bottom[i]!;
          if (w >= long && h >= short) {
            const spare = Math.min(w - long, h - short);
            if (spare < bestSpare) [sheet, best, bestSpare, lies] = [s, i, spare, true];
          }
          if (w >= short && h >= long) {
            const spare = Math.min(w - short, h - long);
            if (spare < bestSpare) [sheet, best, bestSpare, lies] = [s, i, spare, false];
          }
        }
      }
      if (sheet < 0) {
        sheet = sheets++;
        begin(sheet, width, height);
        best = 0;
        lies = liesTighter(width, height, long, short);
        last = [];
      }
      if (sheet === sheets - 1) last.push(side);
      const free = pool[sheet]!;
      const x = free.left[best]!;
      const y = free.bottom[best]!;
      occupy(free, x, y, x + (lies ? long : short), y + (lies ? short : long), kerf + 1);
    }
    return { sheets, last };
  };
}

/** Stock sheets that fills take in turn. */
const pool: FreeSpaces[] = [];

function begin(sheet: number, width: number, height: number): void {
  const free = (pool[sheet] ??= freeSpaces(0, 0, 0, 0));
  free.count = 1;
  free.left[0] = 0;
  free.bottom[0] = 0;
  free.right[0] = width;
  free.top[0] = height;
}
