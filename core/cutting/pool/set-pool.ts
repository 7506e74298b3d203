import type { NestedSheet, NestTask } from '../nest';
import { sizeOf } from '../write-plan';
import { chargesOf } from './charge';

/** Panels known to fit on a stock sheet together; where they lie is worked out once it is wanted. */
export interface PooledSet {
  readonly stock: number;
  /** Number of the rack piece, or -1 for a stock format. */
  readonly rack: number;
  /** Numbers of the kinds, one for each panel, ascending. */
  readonly kinds: Int32Array;
  readonly charge: number;
  readonly sheet: () => NestedSheet;
}

/** Once there are so many, the oldest half is forgotten. */
const MOST_SETS = 20_000;
/** Sheets less full than this share of the average are of little use to a plan with fewer of them. */
const LEAST_SHARE = 0.8;

export class SetPool {
  sets: PooledSet[] = [];
  /** How many have ever come in. */
  come = 0;
  /** Until so many have come, looking through them again is not worth it. */
  wanted = 0;
  /** Whether a look through them is over. */
  isIdle = false;
  private readonly known = new Set<string>();
  private readonly chargeOf: (stock: number, rack: number) => number;
  private leastShare = 0;
  private best: readonly NestedSheet[] = [];

  constructor(readonly nestTask: NestTask) {
    this.chargeOf = chargesOf(nestTask.task);
  }

  /** Sheets are measured by this plan from now on; its own belong to the pool however full they are. */
  begin(best: readonly NestedSheet[]): void {
    this.wanted = 0;
    this.isIdle = false;
    const shares = best.map((sheet) => this.shareOf(sheet.stock, sheet.rack, sheet.filled.area));
    this.leastShare =
      (LEAST_SHARE * shares.reduce((sum, share) => sum + share, 0)) / Math.max(1, best.length);
    this.best = best;
    this.putBest();
  }

  learn(sheets: readonly NestedSheet[]): void {
    for (const sheet of sheets) this.add(sheet, kindsOf(sheet), () => sheet);
  }

  private putBest(): void {
    for (const sheet of this.best) this.put(sheet, kindsOf(sheet), () => sheet);
  }

  /** @param kinds of the panels, in any order */
  add(
    place: { readonly stock: number; readonly rack: number },
    kinds: Int32Array,
    sheet: (kinds: Int32Array) => NestedSheet,
  ): void {
    let area = 0;
    for (const kind of kinds) area += this.nestTask.kinds[kind]!.area;
    if (this.shareOf(place.stock, place.rack, area) < this.leastShare) return;
    this.put(place, kinds, sheet);
  }

  private put(
    { stock, rack }: { readonly stock: number; readonly rack: number },
    kinds: Int32Array,
    sheet: (kinds: Int32Array) => NestedSheet,
  ): void {
    kinds.sort();
    const key = `${stock}/${rack}/${kinds.join()}`;
    if (this.known.has(key)) return;
    this.known.add(key);
    this.come++;
    this.sets.push({ stock, rack, kinds, charge: this.chargeOf(stock, rack), sheet: () => sheet(kinds) });
    if (this.sets.length < MOST_SETS) return;
    this.sets = this.sets.slice(MOST_SETS >> 1);
    this.known.clear();
    for (const kept of this.sets) this.known.add(`${kept.stock}/${kept.rack}/${kept.kinds.join()}`);
    this.putBest();
  }

  private shareOf(stock: number, rack: number, area: number): number {
    const { width, height } = sizeOf(this.nestTask, {
      stock,
      rack,
      filled: { places: [], spaces: [], area: 0 },
    });
    return area / (width * height);
  }
}

function kindsOf({ filled }: NestedSheet): Int32Array {
  return Int32Array.from(filled.places, ({ kind }) => kind);
}
