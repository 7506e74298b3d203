import type { NestedSheet } from '../nest';
import type { Random } from '../random';
import { chargesOf } from './charge';
import { dropSurplus } from './drop-surplus';
import { FractionalCover } from './fractional-cover';
import type { PooledSet, SetPool } from './set-pool';

/** Work of one step, in entries of the linear program; one or two milliseconds. */
const STEP_WORK = 500_000;
/** Costs are raised by random shares up to this, so that fewer exchanges change nothing. */
const SPREAD = 0.005;
/** Sets taken into the program at once, and how many a dive looks at. */
const PRICED = 150;
const NEAR = 1500;
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
 * @returns every `next()` is one bounded step; ends after some dives, or where the pool holds no better plan
 */
export function* dive(
  pool: SetPool,
  best: readonly NestedSheet[],
  random: Random,
): Generator<readonly NestedSheet[] | undefined, void, void> {
  for (;;) {
    const diver = new Diver(pool, best, random);
    if (!(yield* diver.begin())) return;
    // The pool begins a new list when it forgets some of its sets.
    while (diver.sets === pool.sets) {
      yield* diver.settle();
      pool.wanted = Math.max(pool.wanted, MORE * pool.come);
      const plan = yield* diver.dive();
      pool.isIdle = true;
      yield plan ?? undefined;
      pool.isIdle = false;
      if (plan) return;
    }
  }
}

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

  /** Takes the sets of the best plan into the program. @returns false if that is more than can be had */
  *begin(): Generator<undefined, boolean, void> {
    const { program, taken } = this;
    const own = new Set(this.best.map((sheet) => nameOf(sheet.stock, sheet.rack, kindsOf(sheet))));
    this.costNew();
    this.sets.forEach((set, number) => {
      if (own.has(nameOf(set.stock, set.rack, set.kinds))) this.take(number);
    });
    const columns = numbers(taken.length);
    let state = program.repair(columns, columns.length);
    for (; state === 0; state = program.repair(columns, columns.length)) yield* this.pause();
    return state > 0;
  }

  /** Prices all sets of the pool until none would make the program cheaper. */
  *settle(): Generator<undefined, void, void> {
    const { program, taken, isTaken, sets } = this;
    this.costNew();
    for (;;) {
      const columns = numbers(taken.length);
      while (!program.improve(columns, columns.length)) yield* this.pause();
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
    const gap = limit - program.value;
    if (gap < 0) return null;
    // A set that would add more than the gap is in no plan within the limit.
    const near: Priced[] = [];
    for (let number = 0; number < this.costs.length; number++) {
      const reduced = this.reducedCost(number);
      if (reduced <= gap) near.push([reduced, number]);
    }
    near.sort((a, b) => a[0] - b[0]);
    for (const [, number] of near.slice(0, NEAR)) if (!this.isTaken[number]) this.take(number);
    const columns = numbers(taken.length).filter((column) => program.reducedCost(column) <= gap);
    program.save();
    for (let dives = 0; dives < DIVES; dives++) {
      const chosen: PooledSet[] = [];
      let spent = 0;
      const fix = (column: number) => {
        chosen.push(taken[column]!);
        spent += program.cost[column]!;
        program.fix(column);
      };
      for (;;) {
        let state = program.repair(columns, columns.length);
        for (; state === 0; state = program.repair(columns, columns.length)) yield* this.pause();
        if (state < 0 || spent + program.value > limit) break;
        if (fixSome(program, fix, random)) continue;
        const plan = this.written(chosen);
        if (plan) return plan;
        break;
      }
      program.restore();
    }
    return null;
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

type Rows = ReturnType<typeof rowsOf>;

/** A row a kind, then one a format or rack piece that can be had only so many times. */
function rowsOf({ nestTask: { task, kinds } }: SetPool) {
  const demand = kinds.map(({ members }) => members.length);
  const row = new Map<string, number>();
  task.stock.forEach(({ available }, stock) => {
    if (available === undefined) return;
    row.set(`${stock}/-1`, demand.length);
    demand.push(-available);
  });
  task.rack.forEach((_, rack) => {
    row.set(`rack/${rack}`, demand.length);
    demand.push(-1);
  });
  const limitOf = ({ stock, rack }: PooledSet) => row.get(rack < 0 ? `${stock}/-1` : `rack/${rack}`);
  return {
    demand,
    entriesOf(set: PooledSet): number[] {
      const limit = limitOf(set);
      return limit === undefined ? [...set.kinds] : [...set.kinds, ~limit];
    },
    worthOf(set: PooledSet, prices: Float64Array): number {
      let worth = 0;
      for (let i = 0; i < set.kinds.length; i++) worth += prices[set.kinds[i]!]!;
      if (row.size === 0) return worth;
      const limit = limitOf(set);
      return limit === undefined ? worth : worth - prices[limit]!;
    },
  };
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
