import type { NestedSheet } from './nest';
import type { CuttingTask } from './plan';

/** A stock sheet that cannot be had weighs more than all the money of a plan, so that none is planned without need. */
const CHARGE = 1e12;

/** Bought stock sheets by number of the format. */
export function boughtOf(task: CuttingTask, sheets: readonly NestedSheet[]): number[] {
  const bought = task.stock.map(() => 0);
  for (const { stock, rack } of sheets) if (rack < 0) bought[stock]!++;
  return bought;
}

/** Whether some format can be had only so many times. */
export function hasLimits(task: CuttingTask): boolean {
  return task.stock.some(({ available }) => available !== undefined);
}

/**
 * Stock sheets planned beyond what can be had, weighed.
 *
 * @param others bought besides, by number of the format
 */
export function shortageCharge(
  task: CuttingTask,
  sheets: readonly NestedSheet[],
  others?: readonly number[],
): number {
  if (!hasLimits(task)) return 0;
  let short = 0;
  boughtOf(task, sheets).forEach((bought, stock) => {
    const left = Math.max(0, (task.stock[stock]!.available ?? Infinity) - (others?.[stock] ?? 0));
    short += Math.max(0, bought - left);
  });
  return short * CHARGE;
}

/** Money for bought stock sheets, value of rack pieces, and what cannot be had. */
export function chargeOf(
  task: CuttingTask,
  sheets: readonly NestedSheet[],
  others?: readonly number[],
): number {
  return sheets.reduce(
    (sum, { stock, rack }) => sum + (rack < 0 ? task.stock[stock]!.price : (task.rack[rack]!.value ?? 0)),
    shortageCharge(task, sheets, others),
  );
}
