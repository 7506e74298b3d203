import type { NestedSheet, NestTask } from '../nest';
import { sizeOf } from '../write-plan';
import { chargesOf } from './charge';

/** A filled stock sheet that some engine made once: what is on it, without saying which panels. */
export interface PooledSheet {
  readonly sheet: NestedSheet;
  /** Numbers of the kinds on it, ascending, and how many of each. */
  readonly kinds: Int32Array;
  readonly counts: Int32Array;
  readonly charge: number;
  /** True area of its panels as a share of the sheet. */
  readonly share: number;
}

/** Every filled sheet worth remembering, whoever made it; one only of those with the same panels. */
export interface SheetPool {
  readonly nestTask: NestTask;
  readonly sheets: readonly PooledSheet[];
  readonly add: (sheets: readonly NestedSheet[]) => void;
}

/** Over this number, the pool forgets the emptier quarter. */
const MOST_SHEETS = 6000;
const KEPT = 0.75;

export function createPool(nestTask: NestTask, most = MOST_SHEETS): SheetPool {
  const chargeOf = chargesOf(nestTask.task);
  const known = new Set<string>();
  let sheets: PooledSheet[] = [];
  return {
    nestTask,
    get sheets() {
      return sheets;
    },
    add(made) {
      for (const sheet of made) {
        const { kinds, counts } = contentOf(sheet);
        const key = keyOf(sheet, kinds, counts);
        if (known.has(key)) continue;
        known.add(key);
        const { width, height } = sizeOf(nestTask, sheet);
        const charge = chargeOf(sheet.stock, sheet.rack);
        sheets.push({ sheet, kinds, counts, charge, share: sheet.filled.area / (width * height) });
      }
      if (sheets.length <= most) return;
      // What is forgotten may come again: its key goes too.
      const order = [...sheets].sort((a, b) => b.share - a.share);
      for (const { sheet, kinds, counts } of order.slice(Math.floor(most * KEPT)))
        known.delete(keyOf(sheet, kinds, counts));
      sheets = order.slice(0, Math.floor(most * KEPT));
    },
  };
}

function contentOf({ filled }: NestedSheet): { kinds: Int32Array; counts: Int32Array } {
  const numbers = Int32Array.from(filled.places, ({ kind }) => kind).sort();
  const kinds: number[] = [];
  const counts: number[] = [];
  for (const kind of numbers) {
    if (kinds[kinds.length - 1] === kind) counts[counts.length - 1]!++;
    else {
      kinds.push(kind);
      counts.push(1);
    }
  }
  return { kinds: Int32Array.from(kinds), counts: Int32Array.from(counts) };
}

function keyOf({ stock, rack }: NestedSheet, kinds: Int32Array, counts: Int32Array): string {
  return `${stock}/${rack}/${kinds.join()}/${counts.join()}`;
}
