import type { NestedSheet, NestTask } from '../nest';
import type { Random } from '../random';
import { chargesOf } from './charge';
import { dropSurplus } from './drop-surplus';
import { FractionalCover } from './fractional-cover';
import type { PricedSheet, PricedSheets } from './priced-sheets';

/** Work of one step, in entries of the linear program; one or two milliseconds. */
const STEP_WORK = 250_000;
const ROUND = 1e-6;
/** Of the first sheets: how far their panels fall in worth for the next, disturbance, and how far below the best they may be. */
const FALL = 0.8;
const SEED_SPREAD = 0.1;
const SEED_BELOW = 0.1;
/** Share of the steady prices in those that sheets are made by; less where none comes of it, and in a dive. */
const HOLD = 0.85;
const HOLD_IN_A_DIVE = 0.5;
const LEAST_HOLD = 0.2;
/** Once nothing is held, prices are disturbed by such a share, the more the longer nothing came of it. */
const SPREAD = 0.05;
/** Sheets worth less than their cost by more at the prices held are not looked at. */
const BELOW = 0.3;
/** The program will hardly come within the limit if it is likely to end so far above it: whole, and in a dive. */
const ABOVE = 0.2;
const ABOVE_IN_A_DIVE = 0.01;

/** The linear program over sheets that a plan is put together from, and how it comes to new ones. In units of the dearest sheet. */
export class SheetProgram {
  /** What a better plan costs at most. */
  readonly limit: number;
  private readonly cover: FractionalCover;
  private readonly sheets: NestedSheet[] = [];
  private readonly known = new Set<string>();
  private readonly demand: readonly number[];
  /** Panels that are on no sheet taken whole, by kind; may be below 0. */
  private left: number[];
  private whole: NestedSheet[] = [];
  private spent = 0;
  /** Prices that promise the highest bound so far, for all panels. */
  private steady: Float64Array;
  private readonly costs: readonly number[];
  /** Sheets the program may take: since `save`, those that a better plan may hold, and newer ones. */
  private columns: number[] = [];
  private until = STEP_WORK;

  constructor(
    private readonly nestTask: NestTask,
    private readonly priced: PricedSheets,
    best: readonly NestedSheet[],
    private readonly random: Random,
  ) {
    const { kinds, task } = nestTask;
    this.demand = kinds.map(({ members }) => members.length);
    this.left = [...this.demand];
    this.cover = new FractionalCover(this.demand);
    const chargeOf = chargesOf(task);
    const charges = task.stock.map((_, stock) => chargeOf(stock, -1));
    const unit = Math.max(...charges);
    this.costs = charges.map((charge) => charge / unit);
    const charge = best.reduce((sum, { stock, rack }) => sum + chargeOf(stock, rack), 0);
    this.limit = (charge - charges.reduce(divisor, 0)) / unit + ROUND;
    const largest = Math.max(...task.stock.map(({ width, height }) => width * height));
    this.steady = Float64Array.from(kinds, ({ area }) => area / largest);
    for (const sheet of best) this.add(sheet);
  }

  /** How many sheets it knows. */
  get count(): number {
    return this.sheets.length;
  }

  /** Least cost of sheets taken whole and of those that cover the rest in part. */
  get value(): number {
    return this.spent + this.cover.value;
  }

  /**
   * Makes the first sheets, by area; what was on some is worth less to the next.
   *
   * @returns whether all panels are covered
   */
  *begin(fillings: number): Generator<undefined, boolean, void> {
    const { random, priced, demand } = this;
    const prices = this.steady.slice();
    let bound = 0;
    for (let filling = 0; filling < fillings; filling++) {
      const own = prices.map((price) => price * (1 + SEED_SPREAD * random()));
      yield* this.fill(own);
      const most = priced.most(this.costs);
      if (most <= 0) break;
      const total = worthOf(own, demand);
      if (total / most > bound) {
        bound = total / most;
        this.steady = own.map((price) => price / most);
      }
      const left = [...demand];
      for (const sheet of priced.sheets(this.costs, most * (1 - SEED_BELOW))) {
        this.addPriced(sheet);
        for (const kind of sheet.kinds) left[kind]!--;
        if (sheet.kinds.every((kind) => left[kind]! >= 0))
          for (const kind of sheet.kinds) prices[kind]! *= FALL;
        else for (const kind of sheet.kinds) left[kind]!++;
      }
      yield* this.pause();
    }
    return yield* this.repair();
  }

  /**
   * Makes sheets until some fillings in a row add none that lowers the program, or, in a dive, until it comes within the
   * limit. Prices are held back, or they would leap from one filling to the next (see `bounds/cut-weights.ts`).
   */
  *settle(most: number, patience: number): Generator<undefined, void, void> {
    yield* this.improve();
    const { cover, random, priced, left, limit } = this;
    const isDive = this.whole.length > 0;
    const start = isDive ? HOLD_IN_A_DIVE : HOLD;
    let { steady } = this;
    let hold = start;
    let bound = 0;
    let idle = 0;
    for (let filling = 0; filling < most && idle < patience; filling++) {
      const prices = Float64Array.from(cover.prices, (price, kind) => {
        const disturbed = Math.max(0, price) * (1 + SPREAD * idle * (random() - 0.5));
        return hold * steady[kind]! + (1 - hold) * disturbed;
      });
      yield* this.fill(prices);
      let added = 0;
      for (const sheet of priced.sheets(this.costs, 1 - BELOW)) {
        const worth = sheet.kinds.reduce((sum, kind) => sum + cover.prices[kind]!, 0);
        if (worth > this.costs[sheet.stock]! + ROUND && this.addPriced(sheet)) added++;
      }
      yield* this.pause();
      const rate = priced.most(this.costs);
      const total = worthOf(prices, left);
      if (rate > 1 - BELOW && total / rate > bound) {
        bound = total / rate;
        steady = prices.map((price) => price / rate);
      }
      if (added > 0) {
        idle = 0;
        hold = Math.max(hold, start / 2);
        yield* this.improve();
      } else if (hold > 0) hold = hold > LEAST_HOLD ? hold / 2 : 0;
      else idle++;
      if (isDive && this.value <= limit) return;
      if (this.spent + bound > limit + (isDive ? ABOVE_IN_A_DIVE : ABOVE)) return;
    }
  }

  /** Sheets taken in part, with the part. */
  parts(): (readonly [column: number, part: number])[] {
    const { basis, level } = this.cover;
    const parts: [number, number][] = [];
    basis.forEach((column, i) => {
      if (column >= 0 && level[i]! >= ROUND) parts.push([column, level[i]!]);
    });
    return parts;
  }

  /** Takes a sheet whole. Call `repair` before reading anything. */
  fix(column: number): void {
    const sheet = this.sheets[column]!;
    this.cover.fix(column);
    this.whole.push(sheet);
    this.spent += this.costs[sheet.stock]!;
    for (const { kind } of sheet.filled.places) this.left[kind]!--;
  }

  /** @returns false if the sheets do not cover everything */
  *repair(): Generator<undefined, boolean, void> {
    const columns = Int32Array.from(this.columns);
    for (;;) {
      const state = this.cover.repair(columns, columns.length);
      if (state !== 0) return state > 0;
      yield* this.pause();
    }
  }

  save(): void {
    const gap = this.limit - this.cover.value;
    this.columns = this.columns.filter((column) => this.cover.reducedCost(column) <= gap);
    this.cover.save();
  }

  /** No sheet is taken whole any more; those made since `save` stay. */
  restore(): void {
    this.cover.restore();
    this.left = [...this.demand];
    this.whole = [];
    this.spent = 0;
  }

  /** The sheets taken whole as a plan. */
  written(): readonly NestedSheet[] | null {
    const surplus = this.left.map((count) => -count);
    return surplus.some((count) => count < 0) ? null : dropSurplus(this.nestTask, this.whole, surplus);
  }

  *improve(): Generator<undefined, void, void> {
    const columns = Int32Array.from(this.columns);
    while (!this.cover.improve(columns, columns.length)) yield* this.pause();
  }

  private *fill(prices: Float64Array): Generator<undefined, void, void> {
    // Which of equal panels, or of too many, is looked at is left to chance.
    const items = this.left.flatMap((count, kind) => Array.from({ length: Math.max(0, count) }, () => kind));
    for (let i = items.length - 1; i > 0; i--) {
      const j = Math.floor(this.random() * (i + 1));
      [items[i], items[j]] = [items[j]!, items[i]!];
    }
    for (const _ of this.priced.fill(items, prices)) yield* this.pause();
  }

  private addPriced({ stock, places }: PricedSheet): boolean {
    const { kinds } = this.nestTask;
    const area = places.reduce((sum, { kind }) => sum + kinds[kind]!.area, 0);
    return this.add({ stock, rack: -1, filled: { places, spaces: [], area } });
  }

  private add(sheet: NestedSheet): boolean {
    const kinds = Int32Array.from(sheet.filled.places, ({ kind }) => kind).sort();
    const name = `${sheet.stock}/${kinds.join()}`;
    if (this.known.has(name)) return false;
    this.known.add(name);
    this.columns.push(this.sheets.length);
    this.sheets.push(sheet);
    this.cover.add(kinds, this.costs[sheet.stock]!);
    return true;
  }

  private *pause(): Generator<undefined, void, void> {
    const work = this.cover.work + this.priced.work;
    if (work < this.until) return;
    yield undefined;
    this.until = work + STEP_WORK;
  }
}

function worthOf(prices: Float64Array, counts: readonly number[]): number {
  return prices.reduce((sum, price, kind) => sum + price * Math.max(0, counts[kind]!), 0);
}

function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b);
}
