import type { Hundredth } from '../units';
import { choosePacks, type PackChoice, type PackOffered } from './packs';

/**
 * Rolls out of which all pieces can be cut whole: what is left of a roll is of no use for a longer piece.
 *
 * The cheapest sets that hold enough are tried in the order of what they hold, each by cutting the longest piece first
 * from the shortest roll that has it (first fit, decreasing). That may buy a roll more than the best way of cutting them
 * would; what is bought can be cut.
 *
 * @param packs sizes in m² or m
 * @param lengthOf hundredths that a pack of that size is long
 * @returns null where a piece is longer than every roll
 */
export function chooseRolls(
  pieces: readonly Hundredth[],
  need: number,
  packs: readonly PackOffered[],
  lengthOf: (size: number) => Hundredth,
): PackChoice | null {
  const longest = Math.max(0, ...pieces);
  const long = packs.filter(({ size }) => lengthOf(size) >= longest);
  if (long.length === 0) return null;
  const sorted = [...pieces].sort((a, b) => b - a);
  let asked = need;
  for (let i = 0; i < MOST_TRIES; i++) {
    const choice = choosePacks(asked, packs);
    if (choice && canBeCut(sorted, choice, lengthOf)) return { ...choice, leftOver: choice.total - need };
    asked = (choice?.total ?? asked) + LEAST_MORE;
  }
  // One piece a roll of the shortest that has it: more than need be, and never too little.
  const each = long.reduce((a, b) => (b.size < a.size ? b : a));
  const choice = choosePacks(each.size * pieces.length, [each])!;
  return { ...choice, leftOver: choice.total - need, exact: false };
}

const MOST_TRIES = 200;
const LEAST_MORE = 0.001;

function canBeCut(
  pieces: readonly Hundredth[],
  { packs }: PackChoice,
  lengthOf: (size: number) => Hundredth,
): boolean {
  // Short rolls first, so that long ones are left for long pieces.
  const left = packs
    .flatMap(({ size, count }) => Array.from({ length: count }, () => lengthOf(size)))
    .reverse();
  return pieces.every((piece) => {
    const at = left.findIndex((length) => length >= piece);
    if (at >= 0) left[at]! -= piece;
    return at >= 0;
  });
}
