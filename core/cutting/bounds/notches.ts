import { freeSpaces, occupy } from '../free-spaces';
import type { Steps } from '../../panels/pace';
import type { PanelKind } from '../kinds';
import type { BoundSize, Extent } from '../weighings';

/** Notches of more sizes than this are rounded up until so few are left. */
const MOST_SIZES = 32;

const HOSTS_OF_A_STEP = 64;

/** Room for other panels inside the boxes of panels, kerf included. */
export interface Notch extends Extent {
  readonly count: number;
}

/**
 * Every rectangle of waste in the boxes of these panels that cannot be made larger. A rectangle that lies inside such a
 * box, clear of the panel, lies inside one of them. They may overlap, so together they have room for too much, never for
 * too little.
 *
 * @param hosts panels of level and upright edges
 */
export function* notchesOf(hosts: readonly PanelKind[], kerf: number): Steps<readonly Notch[]> {
  const notches: Notch[] = [];
  for (const [number, { poses, members }] of hosts.entries()) {
    if (number % HOSTS_OF_A_STEP === HOSTS_OF_A_STEP - 1) yield undefined;
    const { width, height, cover } = poses[0]!;
    const free = freeSpaces(0, 0, width + kerf, height + kerf);
    for (const [left, bottom, right, top] of cover)
      occupy(free, left, bottom, right + kerf, top + kerf, kerf + 1);
    for (let i = 0; i < free.count; i++) {
      const [a, b] = [free.right[i]! - free.left[i]!, free.top[i]! - free.bottom[i]!];
      notches.push({ width: Math.max(a, b), height: Math.min(a, b), count: members.length });
    }
  }
  return fewSizes(notches);
}

/**
 * Panels that may lie in a notch take nothing of a stock sheet there. So what notches can hold is taken off what all
 * panels weigh, as with a rack piece; or the panels that fit a notch are left out, and then it holds nothing. The latter
 * is done up to the size of a notch that leaves most to be carried by the stock sheets.
 */
export function withoutGuests(
  sizes: readonly BoundSize[],
  notches: readonly Notch[],
): { sizes: readonly BoundSize[]; notches: readonly Notch[] } {
  const sorted = [...notches].sort((a, b) => areaOf(a) - areaOf(b));
  let rest = { sizes, notches: sorted.filter((notch) => sizes.some((size) => fits(size, notch))) };
  let best = rest;
  while (rest.notches.length > 0) {
    const smallest = rest.notches[0]!;
    const others = rest.sizes.filter((size) => !fits(size, smallest));
    rest = {
      sizes: others,
      notches: rest.notches.filter((notch) => others.some((size) => fits(size, notch))),
    };
    if (weightOf(rest) > weightOf(best)) best = rest;
  }
  return best;
}

function weightOf({ sizes, notches }: ReturnType<typeof withoutGuests>): number {
  const sum = (list: readonly BoundSize[]) => list.reduce((all, one) => all + one.count * areaOf(one), 0);
  return sum(sizes) - sum(notches);
}

function areaOf({ width, height }: Extent): number {
  return width * height;
}

function fits(size: Extent, notch: Extent): boolean {
  return (
    Math.max(size.width, size.height) <= Math.max(notch.width, notch.height) &&
    Math.min(size.width, size.height) <= Math.min(notch.width, notch.height)
  );
}

function fewSizes(notches: readonly Notch[]): readonly Notch[] {
  let sizes = notches;
  for (let grid = 1; ; grid *= 2) {
    const merged = new Map<string, Notch>();
    for (const notch of sizes) {
      const width = Math.ceil(notch.width / grid) * grid;
      const height = Math.ceil(notch.height / grid) * grid;
      const key = `${width}×${height}`;
      merged.set(key, { width, height, count: notch.count + (merged.get(key)?.count ?? 0) });
    }
    sizes = [...merged.values()];
    if (sizes.length <= MOST_SIZES) return sizes;
  }
}
