import type { NestedSheet } from '../nest';
import type { Random } from '../random';
import { chargesOf } from './charge';
import { dropSurplus } from './drop-surplus';
import { FractionalCover } from './fractional-cover';
import { rowsOf, type Rows } from './program-rows';
import type { PooledSet, SetPool } from './set-pool';

/** Work of one step, in entries of the linear program; one or two milliseconds. */
const STEP_WORK = 500_000;
/** Costs are raised by random shares up to this, so that fewer exchanges change nothing. */
const SPREAD = 0.005;
/** Sets taken into the program at once. */
const PRICED = 150;
/** Columns that would add more than this are mostly not needed to put the program right. */
const NEAR = 0.1;
/** How often a dive has sets made for what is left to cover before it is given up. */
const ROUNDS = 5;
/** A program whose value falls by less from one round of making sets to the next is ready to dive into. */
const SLOW = 0.02;
const DIVES = 4;
/** Another look at the pool once it has grown by so much. */
const MORE = 1.25;
/** Set apart from a round number by less is round. */
const ROUND = 1e-6;

/**
 * Looks for sets of the pool that together hold every panel and are charged less than the best plan: a linear program
 * over all of them says which to take in part; those are taken whole one after the other, the likelier the larger the
 * part, and the program put right after each, until nothing is left to cover or the limit is passed.
 *
 * Source: diving after column generation, as in R. Sadykov, F. Vanderbeck, A. Pessoa, I. Tahiri, E. Uchoa, Primal
 * heuristics for branch and price, INFORMS J. Computing 31 (2019), from memory.
 *
 * @param best a complete plan; only what is charged less is ever yielded
 * @param makeSets makes the pool grow by what the program lacks
 * @returns every `next()` is one bounded step; ends with a better plan, or where not even a fraction of the pool covers
 */
export function* dive(
  pool: SetPool,
  best: readonly NestedSheet[],
  random: Random,
  makeSets?: MakeSets,
): Generator<readonly NestedSheet[] | undefined, void, void> {
  for (;;) {
    const diver = new Diver(pool, best, random, makeSets);
    if (!(yield* diver.begin())) return;
    let dived = 0;
    let value = Infinity;
    // The pool begins a new list when it forgets some of its sets.
    while (diver.sets === pool.sets) {
      yield* diver.settle();
      const before = pool.come;
      if (makeSets) yield* makeSets(diver.basic(), diver.prices);
      const isDry = pool.come === before;
      const isSlow = value - diver.value < SLOW;
      value = diver.value;
      if (diver.isWithin && (isDry || (isSlow && pool.come >= MORE * dived))) {
        dived = pool.come;
        const plan = yield* diver.dive();
        if (plan) {
          yield plan;
          return;
        }
      }
      if (isDry) {
        pool.wanted = Math.max(pool.wanted, MORE * pool.come);
        pool.isIdle = true;
        yield undefined;
        pool.isIdle = false;
      }
    }
  }
}

/** Adds sets to the pool that are worth more than they cost, step by step. */
export type MakeSets = (sets: readonly PooledSet[], prices: Float64Array) => Generator<undefined, void, void>;

class Diver {
  readonly sets: readonly PooledSet[];
  private readonly rows: Rows;
  private readonly program: FractionalCover;
  private readonly charge: number;
  private readonly unit: number;
  /** Least cost of a plan that is no better; in the units of the program. */
  private readonly limit: number;
  /** Sets in the program, by number of the column. */
  private readonly taken: PooledSet[] = [];
  private readonly isTaken: boolean[] = [];
  private readonly costs: number[] = [];
  private until = STEP_WORK;

  constructor(
    private readonly pool: SetPool,
    private readonly best: readonly NestedSheet[],
    private readonly random: Random,
    private readonly makeSets?: MakeSets,
  ) {
    this.sets = pool.sets;
    this.rows = rowsOf(pool);
    this.program = new FractionalCover(this.rows.demand);
    const charges = this.sets.map(({ charge }) => charge);
    this.unit = Math.max(...new Set(charges));
    const chargeOf = chargesOf(pool.nestTask.task);
    this.charge = best.reduce((sum, { stock, rack }) => sum + chargeOf(stock, rack), 0);
    this.limit =
      ((this.charge - [...new Set(charges)].reduce(divisor, 0)) / this.unit) * (1 + SPREAD) + ROUND;
  }

  get prices(): Float64Array {
    return this.program.prices;
  }

  get value(): number {
    return this.program.value;
  }

  get isWithin(): boolean {
    return this.program.value <= this.limit;
  }

  /** The sets that the program takes in part or whole. */
  basic(): PooledSet[] {
    const sets: PooledSet[] = [];
    const { basis, level } = this.program;
    for (let i = 0; i < basis.length; i++) {
      if (basis[i]! >= 0 && level[i]! > ROUND) sets.push(this.taken[basis[i]!]!);
    }
    return sets;
  }

  /** Takes the sets of the best plan into the program. @returns false if that is more than can be had */
  *begin(): Generator<undefined, boolean, void> {
    const { taken } = this;
    const own = new Set(this.best.map((sheet) => nameOf(sheet.stock, sheet.rack, kindsOf(sheet))));
    this.costNew();
    this.sets.forEach((set, number) => {
      if (own.has(nameOf(set.stock, set.rack, set.kinds))) this.take(number);
    });
    return (yield* this.repaired(numbers(taken.length))) > 0;
  }

  private *repaired(columns: Int32Array): Generator<undefined, number, void> {
    let state = this.program.repair(columns, columns.length);
    for (; state === 0; state = this.program.repair(columns, columns.length)) yield* this.pause();
    return state;
  }

  /** Prices all sets of the pool until none would make the program cheaper. */
  *settle(): Generator<undefined, void, void> {
    const { program, taken, isTaken, sets } = this;
    this.costNew();
    for (let old = 0; ;) {
      const columns = numbers(taken.length);
      // Those that came last, first: of the others few are of use.
      const fresh = columns.subarray(old);
      while (!program.improve(fresh, fresh.length)) yield* this.pause();
      while (!program.improve(columns, columns.length)) yield* this.pause();
      old = taken.length;
      const cheap: Priced[] = [];
      for (let number = 0; number < this.costs.length; number++) {
        if (isTaken[number]) continue;
        const reduced = this.reducedCost(number);
        if (reduced < -ROUND) cheap.push([reduced, number]);
      }
      yield* this.pause();
      if (cheap.length === 0) return;
      cheap.sort((a, b) => a[0] - b[0]);
      for (const [, number] of cheap.slice(0, PRICED)) this.take(number);
      if (sets !== this.pool.sets) return;
    }
  }

  /** @returns a plan within the limit, where a dive ends in one */
  *dive(): Generator<undefined, readonly NestedSheet[] | null, void> {
    const { program, taken, random, limit } = this;
    program.save();
    for (let dives = 0; dives < DIVES; dives++) {
      const chosen: PooledSet[] = [];
      let spent = 0;
      const fix = (column: number) => {
        chosen.push(taken[column]!);
        spent += program.cost[column]!;
        program.fix(column);
      };
      while (yield* this.isWithinOnceMade(limit - spent)) {
        if (fixSome(program, fix, random)) continue;
        const plan = this.written(chosen);
        if (plan) return plan;
        break;
      }
      program.restore();
    }
    return null;
  }

  /** Puts the program right; as long as it exceeds the limit, has sets made for what is left to cover. */
  private *isWithinOnceMade(limit: number): Generator<undefined, boolean, void> {
    const { program, taken, pool, makeSets } = this;
    const all = numbers(taken.length);
    let state = yield* this.repaired(all.filter((column) => program.reducedCost(column) < NEAR));
    if (state < 0) state = yield* this.repaired(all);
    if (state < 0) return false;
    for (let round = 0; program.value > limit && round < ROUNDS; round++) {
      yield* this.settle();
      if (program.value <= limit) return true;
      const before = pool.come;
      if (makeSets) yield* makeSets(this.basic(), program.prices);
      if (pool.come === before) return false;
    }
    if (program.value > limit) yield* this.settle();
    return program.value <= limit;
  }

  private costNew(): void {
    const { costs, sets, unit } = this;
    while (costs.length < sets.length)
      costs.push((sets[costs.length]!.charge / unit) * (1 + SPREAD * this.random()));
  }

  private take(number: number): void {
    this.isTaken[number] = true;
    this.taken.push(this.sets[number]!);
    this.program.add(this.rows.entriesOf(this.sets[number]!), this.costs[number]!);
  }

  private reducedCost(number: number): number {
    this.program.work += 5;
    return this.costs[number]! - this.rows.worthOf(this.sets[number]!, this.program.prices);
  }

  private *pause(): Generator<undefined, void, void> {
    if (this.program.work < this.until) return;
    yield undefined;
    this.until = this.program.work + STEP_WORK;
  }

  private written(chosen: readonly PooledSet[]): NestedSheet[] | null {
    const { nestTask } = this.pool;
    const surplus = nestTask.kinds.map(({ members }) => -members.length);
    for (const set of chosen) for (const kind of set.kinds) surplus[kind]!++;
    if (surplus.some((count) => count < 0)) return null;
    if (chosen.reduce((sum, set) => sum + set.charge, 0) >= this.charge) return null;
    return dropSurplus(
      nestTask,
      chosen.map(({ sheet }) => sheet()),
      surplus,
    );
  }
}

type Priced = readonly [reduced: number, number: number];

/** Fixes what the program takes whole, or else one of its columns. @returns false if it takes none */
function fixSome(program: FractionalCover, fix: (column: number) => void, random: Random): boolean {
  const { basis, level } = program;
  const whole: number[] = [];
  let sum = 0;
  for (let i = 0; i < level.length; i++) {
    if (basis[i]! < 0 || level[i]! < ROUND) continue;
    if (level[i]! > 1 - ROUND) whole.push(basis[i]!);
    sum += level[i]! ** 4;
  }
  if (sum === 0) return false;
  for (const column of whole) fix(column);
  if (whole.length > 0) return true;
  let draw = random() * sum;
  for (let i = 0; i < level.length; i++) {
    if (basis[i]! < 0 || level[i]! < ROUND) continue;
    draw -= level[i]! ** 4;
    if (draw > 0) continue;
    fix(basis[i]!);
    return true;
  }
  return true;
}

function numbers(count: number): Int32Array {
  return Int32Array.from({ length: count }, (_, i) => i);
}

function kindsOf({ filled }: NestedSheet): Int32Array {
  return Int32Array.from(filled.places, ({ kind }) => kind).sort();
}

function nameOf(stock: number, rack: number, kinds: Int32Array): string {
  return `${stock}/${rack}/${kinds.join()}`;
}

function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b);
}
