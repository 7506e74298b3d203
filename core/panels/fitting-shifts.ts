import type { Hundredth } from '../units';

/** A side of cut panels that grows with the start, shrinks with it, or stays. */
export interface GrowingSide {
  readonly length: Hundredth;
  /** What a hundredth more of the start adds: 1, 0 or −1; beside a slope anything. */
  readonly grows: number;
  /** How many panels have it. */
  readonly count: number;
}

/** Panels that are looked for side by side; of panels at least an eighth as long as the stock sheet's side. */
const mostAbreast = 4;
/** Combinations that are looked at; the search is for a few dozen sides. */
const mostLooks = 4_000;

/**
 * Shifts of the start at which as many panels as can, side by side with kerf between them, fit a side of the stock
 * sheet. Going one way, what shrinks comes to fit and what grows comes not to. What fits anywhere all fits where
 * something has come to fit before, and the next to change is something that will not: one shift of each such
 * stretch is enough.
 *
 *       fits from here ├───────────────────────────            shrinking
 *             ├────────────────────────────                    shrinking
 *       ──────────────────────────────┤                        growing
 *                      ·             ↑ all three fit
 *
 * @param within shifts strictly between these two are wanted
 * @returns those first where the most fits; never none, unless nothing lies between
 */
export function fittingShifts(
  sides: readonly GrowingSide[],
  sheetSides: readonly Hundredth[],
  kerf: Hundredth,
  [low, high]: readonly [Hundredth, Hundredth],
): Hundredth[] {
  if (high - low < 2) return [];
  /** Where combinations come to fit, and the first shift at which others no longer do. */
  const changes = new Map<Hundredth, { come: number; go: number }>();
  const changeAt = (at: Hundredth) => {
    let change = changes.get(at);
    if (!change) changes.set(at, (change = { come: 0, go: 0 }));
    return change;
  };
  const longest = Math.max(...sheetSides);
  let looks = 0;
  const least = ({ length, grows }: GrowingSide) => length + Math.min(grows * low, grows * high);
  const add = (first: number, abreast: number, length: number, grows: number, room: number) => {
    if (abreast > 0 && grows !== 0) {
      for (const side of sheetSides) {
        const shift = (side - length - (abreast - 1) * kerf) / grows;
        const at = grows > 0 ? Math.floor(shift) + 1 : Math.ceil(shift);
        if (at > low + 1 && at < high) changeAt(at)[grows > 0 ? 'go' : 'come']++;
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

  const found: { at: Hundredth; fitting: number }[] = [];
  let fitting = 0;
  let hasCome = true;
  for (const [at, { come, go }] of [...changes].sort(([a], [b]) => a - b)) {
    if (go > 0 && hasCome) found.push({ at: at - 1, fitting });
    fitting += come - go;
    hasCome = come > 0 || (hasCome && go === 0);
  }
  if (hasCome) found.push({ at: high - 1, fitting });
  return found.sort((a, b) => b.fitting - a.fitting).map(({ at }) => at);
}
