import type { Hundredth } from '../units';
import { choosePacks, type PackChoice, type PackOffered } from './packs';

/**
 * Rolls out of which all pieces can be cut whole: what is left of a roll is of no use for a longer piece.
 *
 * Sets of rolls are tried from the cheapest on (of equal ones that which holds least, then the one of fewest; where a price
 * is unknown, from the one that holds least), each by cutting the longest piece first from the shortest roll that has it.
 * Where a cleverer cutting would have done, that can buy a roll more; what is bought can always be cut.
 *
 * @param need what the pieces take together, in the unit of the packs' sizes
 * @param lengthOf hundredths that a pack of that size is long
 * @returns null where a piece is longer than every roll; `exact` is false where the search was given up
 */
export function chooseRolls(
  pieces: readonly Hundredth[],
  need: number,
  packs: readonly PackOffered[],
  lengthOf: (size: number) => Hundredth,
): PackChoice | null {
  const longest = Math.max(0, ...pieces);
  const rolls = [...packs].sort((a, b) => b.size - a.size || a.price - b.price);
  if (!rolls[0] || lengthOf(rolls[0].size) < longest) return null;
  const sorted = [...pieces].sort((a, b) => b - a);
  const counts = cheapestSet(rolls, need, (own) => canBeCut(sorted, rolls, own, lengthOf));
  if (!counts) return onePieceARoll(pieces, need, rolls, longest, lengthOf);
  const bought = rolls.map((roll, i) => ({ ...roll, count: counts[i]! })).filter(({ count }) => count > 0);
  const total = bought.reduce((sum, { size, count }) => sum + size * count, 0);
  const isPriced = bought.every(({ price }) => price > 0);
  return {
    packs: bought,
    total,
    leftOver: total - need,
    cost: isPriced ? bought.reduce((sum, { price, count }) => sum + price * count, 0) : null,
    exact: true,
  };
}

interface RollSet {
  /** Cost, held and number of what it has, and least cost of any set that it can grow to. */
  readonly cost: number;
  readonly held: number;
  readonly number: number;
  readonly bound: number;
  readonly counts: readonly number[];
  /** Rolls before this one are not added any more, so that no set is met twice. */
  readonly from: number;
}

const MOST_SETS = 20_000;

/** Best first; undefined where the search is given up. */
function cheapestSet(
  rolls: readonly PackOffered[],
  need: number,
  isEnough: (counts: readonly number[]) => boolean,
): readonly number[] | undefined {
  const isPriced = rolls.every(({ price }) => price > 0);
  const costOf = ({ price, size }: PackOffered) => (isPriced ? price : size);
  const leastRate = Math.min(...rolls.map((roll) => costOf(roll) / roll.size));
  const open: RollSet[] = [];
  push(open, { cost: 0, held: 0, number: 0, bound: 0, counts: rolls.map(() => 0), from: 0 });
  for (let tried = 0; open.length > 0 && tried < MOST_SETS; tried++) {
    const set = pop(open);
    if (set.held >= need - 1e-9 && isEnough(set.counts)) return set.counts;
    for (let i = set.from; i < rolls.length; i++) {
      const held = set.held + rolls[i]!.size;
      const cost = set.cost + costOf(rolls[i]!);
      push(open, {
        cost,
        held,
        number: set.number + 1,
        bound: cost + Math.max(0, need - held) * leastRate,
        counts: set.counts.map((count, k) => (k === i ? count + 1 : count)),
        from: i,
      });
    }
  }
  return undefined;
}

/** More than need be, and never too little. */
function onePieceARoll(
  pieces: readonly Hundredth[],
  need: number,
  rolls: readonly PackOffered[],
  longest: Hundredth,
  lengthOf: (size: number) => Hundredth,
): PackChoice {
  const shortest = rolls.filter(({ size }) => lengthOf(size) >= longest).at(-1)!;
  const perRoll = Math.max(1, Math.floor(lengthOf(shortest.size) / longest));
  const choice = choosePacks(shortest.size * Math.ceil(pieces.length / perRoll), [shortest])!;
  return { ...choice, leftOver: choice.total - need, exact: false };
}

function canBeCut(
  pieces: readonly Hundredth[],
  rolls: readonly PackOffered[],
  counts: readonly number[],
  lengthOf: (size: number) => Hundredth,
): boolean {
  const lengths = rolls.flatMap(({ size }, i) => Array.from({ length: counts[i]! }, () => lengthOf(size)));
  return cutFromRolls(pieces, lengths.reverse()) !== null;
}

/**
 * From which roll each piece is cut: the longest first, each from the first roll that has it.
 *
 * @param lengths of the rolls, the shortest first
 * @returns place of its roll for each piece, in the order of the pieces; null if they cannot be cut so
 */
export function cutFromRolls(pieces: readonly Hundredth[], lengths: readonly Hundredth[]): number[] | null {
  const left = [...lengths];
  const order = pieces.map((_, i) => i).sort((a, b) => pieces[b]! - pieces[a]!);
  const rolls: number[] = pieces.map(() => -1);
  for (const i of order) {
    const at = left.findIndex((length) => length >= pieces[i]!);
    if (at < 0) return null;
    left[at]! -= pieces[i]!;
    rolls[i] = at;
  }
  return rolls;
}

function isBefore(a: RollSet, b: RollSet): boolean {
  return (a.bound - b.bound || a.held - b.held || a.number - b.number) < 0;
}

/** A binary heap: no set is before the one above it. */
function push(heap: RollSet[], set: RollSet): void {
  let at = heap.push(set) - 1;
  while (at > 0) {
    const above = (at - 1) >> 1;
    if (!isBefore(heap[at]!, heap[above]!)) return;
    swap(heap, at, above);
    at = above;
  }
}

function pop(heap: RollSet[]): RollSet {
  swap(heap, 0, heap.length - 1);
  const first = heap.pop()!;
  for (let at = 0; ;) {
    const [left, right] = [2 * at + 1, 2 * at + 2];
    let least = at;
    if (left < heap.length && isBefore(heap[left]!, heap[least]!)) least = left;
    if (right < heap.length && isBefore(heap[right]!, heap[least]!)) least = right;
    if (least === at) return first;
    swap(heap, at, least);
    at = least;
  }
}

function swap(heap: RollSet[], a: number, b: number): void {
  [heap[a], heap[b]] = [heap[b]!, heap[a]!];
}
