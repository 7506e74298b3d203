import type { Way } from './fill-sheet';
import type { Score } from './score-place';
import type { PanelKind } from './kinds';
import type { NestRule, NestTask } from './nest';
import type { Random } from './random';

/** What a kind is ordered by, largest first. */
type Size = (kind: PanelKind) => number;

const boxArea: Size = ({ longSide, shortSide }) => longSide * shortSide;
const sides: Size = ({ longSide, shortSide }) => longSide + shortSide;
const shortThenLong: Size = ({ longSide, shortSide }) => shortSide + longSide / 1e9;
const longThenShort: Size = ({ longSide, shortSide }) => longSide + shortSide / 1e9;

/**
 * Rules for the first plan, best first. Which come first was found on the classic instances of Berkey & Wang
 * and Martello & Vigo (see test/bench/cutting-bench.ts).
 */
const firstRules: readonly (readonly [Score, Size])[] = [
  ['contact', boxArea],
  ['bottom-left', shortThenLong],
  ['contact', sides],
  ['long-side', boxArea],
  ['contact', shortThenLong],
  ['bottom-left', boxArea],
  ['contact', longThenShort],
  ['short-side', boxArea],
];
const scores: readonly Score[] = ['contact', 'contact', 'bottom-left', 'area', 'short-side', 'long-side'];
const ways: readonly Way[] = ['lying', 'standing', 'either'];
/** Of the disturbed rules, how many also say which way round each kind is tried first. */
const TURNED_SHARE = 0.5;
const sizes: readonly Size[] = [boxArea, boxArea, shortThenLong, sides, longThenShort];

export function orderedRules({ task, kinds }: NestTask): NestRule[] {
  const leaning = task.stock.map(() => 1);
  return firstRules.map(([score, size]) => ({ score, order: orderBy(kinds, size), leaning }));
}

/** A rule with its order disturbed by up to some tenths, and its choice of stock a little. */
export function disturbedRule(
  { task, kinds }: NestTask,
  members: readonly number[],
  random: Random,
): NestRule {
  const pick = <T>(list: readonly T[]) => list[Math.floor(random() * list.length)]!;
  const score = pick(scores);
  const size = pick(sizes);
  const noise = random() * random() * 0.9;
  const keys = new Map(
    members.map((kind) => [kind, size(kinds[kind]!) * (1 + noise * (random() - 0.5) * 2)]),
  );
  return {
    score,
    order: [...members].sort((a, b) => keys.get(b)! - keys.get(a)! || a - b),
    leaning: task.stock.map(() => 1 + 0.4 * (random() - 0.5)),
    ...(random() < TURNED_SHARE && { ways: kinds.map(() => pick(ways)) }),
  };
}

function orderBy(kinds: readonly PanelKind[], size: Size): number[] {
  const keys = kinds.map(size);
  return keys.map((_, i) => i).sort((a, b) => keys[b]! - keys[a]! || a - b);
}
