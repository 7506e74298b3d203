import { runSteps, type Steps } from '../panels/pace';
import { compare } from './measure';
import { nestInSteps, type NestedSheet, type NestRule, type NestTask } from './nest';
import type { CuttingTask } from './plan';
import { chargeOf } from './shortage';

/** Pieces without which a nest is tried again. */
const MOST_PIECES_TRIED = 12;

/** Without the rack, and with it where that saves cost or stock sheets; then only the pieces that are needed. */
export function nestWithRack(nestTask: NestTask, rule: NestRule): NestedSheet[] {
  return runSteps(nestWithRackInSteps(nestTask, rule));
}

/** The same, with pauses. */
export function* nestWithRackInSteps(nestTask: NestTask, rule: NestRule): Steps<NestedSheet[]> {
  const { task, kinds } = nestTask;
  const counts = () => kinds.map(({ members }) => members.length);
  const plain = yield* nestInSteps(nestTask, rule, counts(), []);
  if (task.rack.length === 0) return plain;
  const size = (piece: number) => task.rack[piece]!.width * task.rack[piece]!.height;
  const all = task.rack.map((_, piece) => piece).sort((a, b) => size(a) - size(b));
  const cheap = all.filter((piece) => isCheap(task, piece));
  const candidates = cheap.length < all.length ? [all, cheap] : [all];
  let [racked, rack] = [plain, [] as number[]];
  for (const pieces of candidates) {
    const tried = yield* nestInSteps(nestTask, rule, counts(), pieces);
    if (compare(spend(task, tried), spend(task, racked)) < 0) [racked, rack] = [tried, piecesOf(tried)];
  }
  for (const piece of rack.slice(0, MOST_PIECES_TRIED)) {
    const fewer = yield* nestInSteps(
      nestTask,
      rule,
      counts(),
      rack.filter((other) => other !== piece),
    );
    if (compare(spend(task, fewer), spend(task, racked)) <= 0) {
      racked = fewer;
      rack = piecesOf(fewer);
    }
  }
  return racked;
}

function piecesOf(sheets: readonly NestedSheet[]): number[] {
  return sheets.flatMap(({ rack }) => (rack < 0 ? [] : [rack]));
}

/** Whether a rack piece costs less for its area than a stock sheet of its kind. */
function isCheap({ stock, rack }: CuttingTask, number: number): boolean {
  const { stock: id, width, height, value = 0 } = rack[number]!;
  const own = stock.find((format) => format.id === id);
  return value === 0 || (own !== undefined && value * own.width * own.height <= own.price * width * height);
}

/** What the plan is charged with, and the number of bought stock sheets. */
function spend(task: CuttingTask, sheets: readonly NestedSheet[]): [cost: number, bought: number] {
  return [chargeOf(task, sheets), sheets.filter(({ rack }) => rack < 0).length];
}
