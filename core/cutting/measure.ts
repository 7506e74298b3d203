import type { NestedSheet, NestTask } from './nest';
import { drawn, type Drawings } from './write-plan';

/** What plans are compared by, in this order; less is better. */
export type Measure = readonly [
  cost: number,
  boughtSheets: number,
  /** A rack piece is used only where that saves cost or a bought stock sheet. */
  rackPieces: number,
  /** The largest offcut that is kept, negative. */
  offcut: number,
  cutLength: number,
];

export function measure(nestTask: NestTask, sheets: readonly NestedSheet[], drawings: Drawings): Measure {
  let cost = 0;
  let bought = 0;
  let offcut = 0;
  let cutLength = 0;
  for (const sheet of sheets) {
    if (sheet.rack < 0) {
      bought++;
      cost += nestTask.task.stock[sheet.stock]!.price;
    }
    const drawing = drawn(drawings, nestTask, sheet);
    offcut = Math.max(offcut, drawing.largestOffcut);
    cutLength += drawing.cutLength;
  }
  return [cost, bought, sheets.length - bought, -offcut, cutLength];
}

/** Negative if `a` is better: the first place in which they differ decides. */
export function compare(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) {
    if (a[i]! !== b[i]!) return a[i]! - b[i]!;
  }
  return 0;
}
