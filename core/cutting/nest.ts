import { runSteps, type Steps } from '../panels/pace';
import { fillSheet, type FilledSheet, type Way } from './fill-sheet';
import type { Score } from './score-place';
import { kindsInSteps, type PanelKind } from './kinds';
import type { CuttingTask } from './plan';
import { hasLimits } from './shortage';

const FILLS_OF_A_STEP = 8;

/** A task read once: its panels by kind. */
export interface NestTask {
  readonly task: CuttingTask;
  readonly kinds: readonly PanelKind[];
  /** Kinds of all panels, where some of `kinds` are slanted pairs (see `slanted-pairs.ts`). Bounds go by these. */
  readonly single?: readonly PanelKind[];
}

/** A stock sheet with what is on it, by kinds; which panel of a kind goes where is decided last. */
export interface NestedSheet {
  readonly stock: number;
  /** Number of the rack piece it is, or -1 for a bought stock sheet. */
  readonly rack: number;
  readonly filled: FilledSheet;
}

/** How one nest goes about it. */
export interface NestRule {
  /** Numbers of kinds, in the order they are tried. */
  readonly order: readonly number[];
  readonly score: Score;
  /** Factor on what a square hundredth of each stock format costs; 1 is its true price. */
  readonly leaning: readonly number[];
  /** Which way round each kind is tried first, by number. A score alone lays the first panels one way only. */
  readonly ways?: readonly Way[];
}

export function readNestTask(task: CuttingTask): NestTask {
  return runSteps(readNestTaskInSteps(task));
}

/** The same, with pauses. */
export function* readNestTaskInSteps(task: CuttingTask): Steps<NestTask> {
  return { task, kinds: yield* kindsInSteps(task) };
}

/**
 * Fills one stock sheet after the other, each as far as the order allows. Rack pieces come first, in the order
 * given; one on which nothing fits is left on the rack.
 *
 * @param counts panels left of each kind; all zero afterwards
 * Stock that can be had only so many times is bought beyond that only for panels that no other format can give.
 *
 * @param rack numbers of the rack pieces that may be used
 * @param others bought besides, by number of the format
 */
export function nest(
  nestTask: NestTask,
  rule: NestRule,
  counts: number[],
  rack: readonly number[],
  others?: readonly number[],
): NestedSheet[] {
  return runSteps(nestInSteps(nestTask, rule, counts, rack, others));
}

/** The same, with pauses. */
export function* nestInSteps(
  { task, kinds }: NestTask,
  rule: NestRule,
  counts: number[],
  rack: readonly number[],
  others?: readonly number[],
): Steps<NestedSheet[]> {
  const { score, ways } = rule;
  const settings = { kinds, kerf: task.kerf, edgeToEdge: task.method === 'edge-to-edge', score, ways };
  const sheets: NestedSheet[] = [];
  let fills = 0;
  const left = task.stock.map(({ available = Infinity }, stock) => available - (others?.[stock] ?? 0));
  const order = needyFirst(task, kinds, rule.order);
  const orders = task.stock.map((_, stock) => order.filter((kind) => kinds[kind]!.allowed.includes(stock)));
  for (const number of rack) {
    const piece = task.rack[number]!;
    const stock = task.stock.findIndex(({ id }) => id === piece.stock);
    if (stock < 0) continue;
    const filled = fillSheet(settings, piece.width, piece.height, orders[stock]!, counts);
    if (filled) sheets.push({ stock, rack: number, filled });
  }
  for (const first of order) {
    while (counts[first]! > 0) {
      if (++fills % FILLS_OF_A_STEP === 0) yield undefined;
      const { stock, filled, used } = cheapestFill(first);
      do {
        sheets.push({ stock, rack: -1, filled });
        used.forEach((count, kind) => (counts[kind] = counts[kind]! - count));
        left[stock]!--;
        // While enough is left of everything on it, the next stock sheet comes out the same.
      } while (left[stock] !== 0 && [...used].every(([kind, count]) => counts[kind]! >= count));
    }
  }
  return sheets;

  /** The first kind decides which formats come into question; the least price for the area used is taken. */
  function cheapestFill(first: number) {
    let best: { stock: number; filled: FilledSheet; rate: number; worth: number } | undefined;
    const { stock: formats } = kinds[first]!;
    const canBeHad = formats.filter((stock) => left[stock]! > 0);
    for (const stock of canBeHad.length > 0 ? canBeHad : formats) {
      const { width, height, price } = task.stock[stock]!;
      const filled = fillSheet(settings, width, height, orders[stock]!, [...counts]);
      if (!filled) continue;
      const rate = (price * rule.leaning[stock]!) / filled.area;
      if (!best || rate < best.rate || (rate === best.rate && filled.area > best.worth)) {
        best = { stock, filled, rate, worth: filled.area };
      }
    }
    if (!best) throw new Error('A panel kind fits none of its stock sheets.');
    const used = new Map<number, number>();
    for (const { kind } of best.filled.places) used.set(kind, (used.get(kind) ?? 0) + 1);
    return { ...best, used };
  }
}

/** Where stock can be had only so many times, the kinds that nothing else can give come first. */
function needyFirst(
  task: CuttingTask,
  kinds: readonly PanelKind[],
  order: readonly number[],
): readonly number[] {
  if (!hasLimits(task)) return order;
  const isNeedy = (kind: number) =>
    kinds[kind]!.stock.every((stock) => task.stock[stock]!.available !== undefined);
  return [...order.filter(isNeedy), ...order.filter((kind) => !isNeedy(kind))];
}
