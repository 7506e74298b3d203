import { compare } from './measure';
import { nest, type NestedSheet, type NestRule, type NestTask } from './nest';
import type { CuttingTask } from './plan';

/** Pieces without which a nest is tried again. */
const MOST_PIECES_TRIED = 12;

/** Without the rack, and with it where that saves cost or stock sheets; then only the pieces that are needed. */
export function nestWithRack(nestTask: NestTask, rule: NestRule): NestedSheet[] {
  const { task, kinds } = nestTask;
  const counts = () => kinds.map(({ members }) => members.length);
  const plain = nest(nestTask, rule, counts(), []);
  if (task.rack.length === 0) return plain;
  const size = (piece: number) => task.rack[piece]!.width * task.rack[piece]!.height;
  let rack = task.rack.map((_, piece) => piece).sort((a, b) => size(a) - size(b));
  let racked = nest(nestTask, rule, counts(), rack);
  if (compare(spend(task, racked), spend(task, plain)) >= 0) return plain;
  rack = racked.flatMap((sheet) => (sheet.rack < 0 ? [] : [sheet.rack]));
  for (const piece of rack.slice(0, MOST_PIECES_TRIED)) {
    const fewer = nest(
      nestTask,
      rule,
      counts(),
      rack.filter((other) => other !== piece),
    );
    if (compare(spend(task, fewer), spend(task, racked)) <= 0) {
      racked = fewer;
      rack = racked.flatMap((sheet) => (sheet.rack < 0 ? [] : [sheet.rack]));
    }
  }
  return racked;
}

/** Money and number of bought stock sheets. */
function spend(task: CuttingTask, sheets: readonly NestedSheet[]): [cost: number, bought: number] {
  const bought = sheets.filter((sheet) => sheet.rack < 0);
  return [bought.reduce((sum, { stock }) => sum + task.stock[stock]!.price, 0), bought.length];
}
