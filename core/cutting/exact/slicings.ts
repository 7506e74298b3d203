import type { PanelKind } from '../kinds';

/** A set of panels cut out edge to edge: the smallest piece it comes from, kerf included, and how. */
export type Slicing =
  | { readonly width: number; readonly height: number; readonly panel: number; readonly pose: number }
  | {
      readonly width: number;
      readonly height: number;
      readonly along: 'x' | 'y';
      readonly first: Slicing;
      readonly second: Slicing;
    };

/**
 * For every set of these panels (bit i: panel i) every smallest piece of sheet that it can be cut out of edge to edge,
 * none both wider and higher than another. Certain: whatever is cut edge to edge is cut in two and both parts again.
 *
 * @param panels kind of each panel; rectangles only, at most some ten
 * @param longest, shortest sides of the largest sheet, kerf included; nothing larger is kept
 * @yields work done since the last yield, every so often
 */
export function* slicingsOf(
  kinds: readonly PanelKind[],
  panels: readonly number[],
  kerf: number,
  longest: number,
  shortest: number,
): Generator<number, Slicing[][], void> {
  const sets: Slicing[][] = [[]];
  let work = 0;
  for (let set = 1; set < 1 << panels.length; set++) {
    /** By width the lowest. */
    const found = new Map<number, Slicing>();
    const take = (slicing: Slicing) => {
      found.set(slicing.width, slicing);
    };
    const isNew = (width: number, height: number) => {
      if (!fits(width, height)) return false;
      const known = found.get(width);
      return known === undefined || height < known.height;
    };
    if ((set & (set - 1)) === 0) {
      const panel = 31 - Math.clz32(set);
      kinds[panels[panel]!]!.poses.forEach(({ width, height }, pose) =>
        take({ width: width + kerf, height: height + kerf, panel, pose }),
      );
    }
    // The part with the highest panel comes first, so that no pair of parts is looked at twice.
    const highest = 1 << (31 - Math.clz32(set));
    for (let part = (set - 1) & set; part > 0; part = (part - 1) & set) {
      if (!(part & highest)) continue;
      for (const first of sets[part]!) {
        for (const second of sets[set ^ part]!) {
          const beside = first.width + second.width;
          const above = first.height + second.height;
          const wide = Math.max(first.width, second.width);
          const high = Math.max(first.height, second.height);
          if (isNew(beside, high)) take({ width: beside, height: high, along: 'x', first, second });
          if (isNew(wide, above)) take({ width: wide, height: above, along: 'y', first, second });
        }
      }
      work += sets[part]!.length * sets[set ^ part]!.length + 1;
    }
    sets.push(smallest([...found.values()]));
    work += found.size * 4;
    if (work > WORK_OF_A_STEP) {
      yield work;
      work = 0;
    }
  }
  return sets;

  function fits(width: number, height: number): boolean {
    return Math.max(width, height) <= longest && Math.min(width, height) <= shortest;
  }
}

const WORK_OF_A_STEP = 40_000;

function smallest(slicings: Slicing[]): Slicing[] {
  slicings.sort((a, b) => a.width - b.width || a.height - b.height);
  const kept: Slicing[] = [];
  let lowest = Infinity;
  for (const slicing of slicings) {
    if (slicing.height >= lowest) continue;
    kept.push(slicing);
    lowest = slicing.height;
  }
  return kept;
}
