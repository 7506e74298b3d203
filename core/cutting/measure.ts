import type { NestedSheet, NestTask } from './nest';
import { chargeOf } from './shortage';
import { drawn, type Drawings } from './write-plan';

/** What plans are compared by, in this order; less is better. */
export type SheetsMeasure = readonly [
  /** Bought stock sheets at their price, rack pieces at their value; stock sheets that cannot be had weigh more. */
  cost: number,
  boughtSheets: number,
  /** A rack piece is used only where that saves cost or a bought stock sheet. */
  rackPieces: number,
  /** The largest offcut that is kept, negative. */
  offcut: number,
  cutLength: number,
];

/** The same, and last: stock sheets that differ. A fitter repeats a pattern. */
export type Measure = readonly [...SheetsMeasure, patterns: number];

/** @param others bought besides these stock sheets, by number of the format; counts where only so many can be had */
export function measure(
  nestTask: NestTask,
  sheets: readonly NestedSheet[],
  drawings: Drawings,
  others?: readonly number[],
): Measure {
  return [...measureSheets(nestTask, sheets, drawings, others), patternsOf(nestTask, sheets, drawings)];
}

/** The measure but for the patterns, which say little about a few sheets and take the longest. */
export function measureSheets(
  nestTask: NestTask,
  sheets: readonly NestedSheet[],
  drawings: Drawings,
  others?: readonly number[],
): SheetsMeasure {
  let bought = 0;
  let offcut = 0;
  let cutLength = 0;
  for (const sheet of sheets) {
    if (sheet.rack < 0) bought++;
    const drawing = drawn(drawings, nestTask, sheet);
    offcut = Math.max(offcut, drawing.largestOffcut);
    cutLength += drawing.cutLength;
  }
  return [chargeOf(nestTask.task, sheets, others), bought, sheets.length - bought, -offcut, cutLength];
}

/** Stock sheets that differ; every rack piece does. */
export function patternsOf(nestTask: NestTask, sheets: readonly NestedSheet[], drawings: Drawings): number {
  // Written one by one for every measure, keys of a whole delivery would cost more than all the rest.
  const patterns = nestTask.task.stock.map(() => new Set<string>());
  let racked = 0;
  for (const sheet of sheets) {
    if (sheet.rack >= 0) racked++;
    else patterns[sheet.stock]!.add(drawn(drawings, nestTask, sheet).pattern);
  }
  return patterns.reduce((sum, { size }) => sum + size, racked);
}

/** Negative if `a` is better: the first place in which they differ decides. */
export function compare(a: readonly (number | undefined)[], b: readonly (number | undefined)[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    if (a[i]! !== b[i]!) return a[i]! - b[i]!;
  }
  return 0;
}
