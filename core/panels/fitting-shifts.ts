import type { Hundredth } from '../units';

/** A side of cut panels that grows with the start, shrinks with it, or stays. */
export interface GrowingSide {
  readonly length: Hundredth;
  /** What a hundredth more of the start adds: 1, 0 or −1. */
  readonly grows: number;
  /** How many panels have it. */
  readonly count: number;
}

/** Panels that are looked for side by side; of panels at least an eighth as long as the stock sheet's side. */
const mostAbreast = 4;
/** Combinations that are looked at; the search is for a few dozen sides. */
const mostLooks = 4_000;

/**
 * Shifts of the start at which some of these panels, side by side with kerf between them, just fit a side of the
 * stock sheet: a hundredth further they would not. Between two such shifts the same panels go on the same stock
 * sheets, so that nothing else need be tried.
 *
 * @param within shifts strictly between these two are wanted
 * @returns those of fewest panels first
 */
export function fittingShifts(
  sides: readonly GrowingSide[],
  sheetSides: readonly Hundredth[],
  kerf: Hundredth,
  [low, high]: readonly [Hundredth, Hundredth],
): Hundredth[] {
  const found: Set<Hundredth>[] = Array.from({ length: mostAbreast + 1 }, () => new Set());
  const longest = Math.max(...sheetSides);
  let looks = 0;
  const least = ({ length, grows }: GrowingSide) => length + Math.min(grows * low, grows * high);
  const add = (first: number, abreast: number, length: number, grows: number, room: number) => {
    if (abreast > 0 && grows !== 0) {
      for (const side of sheetSides) {
        const shift = (side - length - (abreast - 1) * kerf) / grows;
        const at = grows > 0 ? Math.floor(shift) : Math.ceil(shift);
        if (at > low && at < high) found[abreast]!.add(at);
      }
    }
    if (abreast === mostAbreast) return;
    for (let i = first; i < sides.length; i++) {
      const side = sides[i]!;
      if (looks >= mostLooks) return;
      const short = least(side);
      for (let n = 1; n <= side.count && abreast + n <= mostAbreast; n++) {
        if (n * (short + kerf) > room) break;
        looks++;
        add(i + 1, abreast + n, length + n * side.length, grows + n * side.grows, room - n * (short + kerf));
      }
    }
  };
  add(0, 0, 0, 0, longest + kerf);
  return [...new Set(found.flatMap((shifts) => [...shifts]))];
}
