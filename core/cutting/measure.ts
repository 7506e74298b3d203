import type { NestedSheet, NestTask } from './nest';
import { chargeOf } from './shortage';
import { drawn, type Drawings } from './write-plan';

/** What plans are compared by, in this order; less is better. */
export type Measure = readonly [
  /** Bought stock sheets at their price, rack pieces at their value; stock sheets that cannot be had weigh more. */
  cost: number,
  boughtSheets: number,
  /** A rack piece is used only where that saves cost or a bought stock sheet. */
  rackPieces: number,
  /** The largest offcut that is kept, negative. */
  offcut: number,
  cutLength: number,
  /** Stock sheets that differ: a fitter repeats a pattern. */
  patterns?: number,
];

/** @param others bought besides these stock sheets, by number of the format; counts where only so many can be had */
export function measure(
  nestTask: NestTask,
  sheets: readonly NestedSheet[],
  drawings: Drawings,
  others?: readonly number[],
): Measure {
  let bought = 0;
  let offcut = 0;
  let cutLength = 0;
  // Written one by one for every measure, keys of a whole delivery would cost more than all the rest.
  const patterns = nestTask.task.stock.map(() => new Set<string>());
  for (const sheet of sheets) {
    const drawing = drawn(drawings, nestTask, sheet);
    offcut = Math.max(offcut, drawing.largestOffcut);
    cutLength += drawing.cutLength;
    if (sheet.rack >= 0) continue;
    bought++;
    patterns[sheet.stock]!.add(drawing.pattern);
  }
  const cost = chargeOf(nestTask.task, sheets, others);
  // Every rack piece is a pattern of its own.
  const racked = sheets.length - bought;
  const differing = patterns.reduce((sum, { size }) => sum + size, racked);
  return [cost, bought, racked, -offcut, cutLength, differing];
}

/** Negative if `a` is better: the first place in which they differ decides. */
export function compare(a: readonly (number | undefined)[], b: readonly (number | undefined)[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    if (a[i]! !== b[i]!) return a[i]! - b[i]!;
  }
  return 0;
}
