/** What differs by less counts as equal: costs are near 1, so are most entries. */
const LEAST = 1e-7;
/** The inverse is made anew after so many exchanges, before its rounding errors count. */
const EXCHANGES = 120;

/**
 * A linear program over a growing pool of columns: the least cost of columns that cover every row as often as demanded,
 * in any fraction. Single columns can be fixed to be taken once more than the program says, and everything taken back.
 *
 *     least Σ cost · x    with    Σ entries · x − surplus = demand,    x ≥ 0, surplus ≥ 0
 *
 * Source: revised simplex with an explicit inverse, the primal method where columns came in, the dual one where demand
 * changed; G. B. Dantzig, Linear Programming and Extensions (1963), from memory.
 */
export class FractionalCover {
  /** Entries looked at, ever. */
  work = 0;
  /** Number of columns. */
  count = 0;
  /** What one more of each row would cost. */
  readonly prices: Float64Array;
  /** By place in the basis: a column, or −1 − row for the surplus of a row; and how much of it is taken. */
  readonly basis: Int32Array;
  readonly level: Float64Array;
  cost = new Float64Array(256);
  private start = new Int32Array(257);
  /** Rows of the columns one after the other, a row with entry 2 twice; ~row where the entry is −1. */
  private entries = new Int32Array(2048);
  private readonly inverse: Float64Array;
  private readonly demand: Float64Array;
  private readonly step: Float64Array;
  private exchanged = 0;
  private saved: {
    basis: Int32Array;
    level: Float64Array;
    inverse: Float64Array;
    prices: Float64Array;
    demand: Float64Array;
  } | null = null;

  /** @param demand of each row; less than 0 for a row of which columns take away */
  constructor(demand: ArrayLike<number>) {
    const rows = demand.length;
    this.demand = Float64Array.from(demand);
    this.prices = new Float64Array(rows);
    this.basis = Int32Array.from({ length: rows }, (_, row) => -1 - row);
    this.level = Float64Array.from(demand, (number) => -number);
    this.inverse = new Float64Array(rows * rows);
    this.step = new Float64Array(rows);
    for (let i = 0; i < rows; i++) this.inverse[i * rows + i] = -1;
  }

  /** @param entries rows, one as often as its entry says; ~row for an entry of −1 */
  add(entries: ArrayLike<number>, cost: number): void {
    const from = this.start[this.count]!;
    const to = from + entries.length;
    if (to > this.entries.length) this.entries = longer(this.entries, to);
    for (let i = 0; i < entries.length; i++) this.entries[from + i] = entries[i]!;
    if (this.count + 2 > this.start.length) {
      this.start = longer(this.start, this.count + 2);
      const costs = new Float64Array(this.start.length);
      costs.set(this.cost);
      this.cost = costs;
    }
    this.cost[this.count] = cost;
    this.start[++this.count] = to;
  }

  /** Least cost of what is still demanded. */
  get value(): number {
    let value = 0;
    for (let i = 0; i < this.level.length; i++) {
      const column = this.basis[i]!;
      if (column >= 0) value += this.cost[column]! * this.level[i]!;
    }
    return value;
  }

  /** How much one more of the column would add to the least cost; never negative at the optimum. */
  reducedCost(column: number): number {
    return this.cost[column]! - this.worth(column, this.prices, 0);
  }

  /** What the column holds no longer need be covered. Call `repair` before reading anything. */
  fix(column: number): void {
    this.fill(column);
    for (let i = 0; i < this.level.length; i++) this.level[i]! -= this.step[i]!;
    for (let at = this.start[column]!; at < this.start[column + 1]!; at++) {
      const row = this.entries[at]!;
      if (row >= 0) this.demand[row]!--;
      else this.demand[~row]!++;
    }
  }

  save(): void {
    const { basis, level, inverse, prices, demand } = this;
    this.saved = {
      basis: basis.slice(),
      level: level.slice(),
      inverse: inverse.slice(),
      prices: prices.slice(),
      demand: demand.slice(),
    };
  }

  restore(): void {
    const { basis, level, inverse, prices, demand } = this.saved!;
    this.basis.set(basis);
    this.level.set(level);
    this.inverse.set(inverse);
    this.prices.set(prices);
    this.demand.set(demand);
  }

  /** One exchange of the dual method over the columns named. @returns 1 done, 0 to be continued, −1 nothing covers all */
  repair(columns: Int32Array, count: number): 1 | 0 | -1 {
    const { level, inverse, prices } = this;
    const rows = level.length;
    let leaving = -1;
    let least = -LEAST;
    for (let i = 0; i < rows; i++) {
      if (level[i]! >= least) continue;
      least = level[i]!;
      leaving = i;
    }
    if (leaving < 0) return 1;
    const row = leaving * rows;
    let entering = -1 - rows;
    let best = Infinity;
    let bestStep = 0;
    const consider = (column: number, along: number, reduced: number) => {
      const ratio = Math.max(0, reduced) / -along;
      if (ratio > best + LEAST || (ratio > best - LEAST && -along <= bestStep)) return;
      best = Math.min(best, ratio);
      bestStep = -along;
      entering = column;
    };
    for (let i = 0; i < rows; i++) {
      const along = -inverse[row + i]!;
      if (along < -LEAST) consider(-1 - i, along, prices[i]!);
    }
    for (let c = 0; c < count; c++) {
      const column = columns[c]!;
      const along = this.worth(column, inverse, row);
      if (along < -LEAST) consider(column, along, this.reducedCost(column));
    }
    this.work += rows;
    if (entering < -rows) return -1;
    this.exchange(leaving, entering);
    return 0;
  }

  /** One exchange of the primal method. @returns whether it is done */
  improve(columns: Int32Array, count: number): boolean {
    const { level, prices, step } = this;
    const rows = level.length;
    let entering = -1 - rows;
    let least = -LEAST;
    for (let i = 0; i < rows; i++) {
      if (prices[i]! >= least) continue;
      least = prices[i]!;
      entering = -1 - i;
    }
    for (let c = 0; c < count; c++) {
      const reduced = this.reducedCost(columns[c]!);
      if (reduced >= least) continue;
      least = reduced;
      entering = columns[c]!;
    }
    if (entering < -rows) return true;
    this.fill(entering);
    let leaving = -1;
    let limit = Infinity;
    for (let i = 0; i < rows; i++) {
      if (step[i]! <= LEAST) continue;
      const ratio = Math.max(0, level[i]!) / step[i]!;
      // Of those that run out together the one with the largest step keeps the inverse sound.
      if (ratio > limit + LEAST || (ratio > limit - LEAST && step[i]! <= step[leaving]!)) continue;
      limit = Math.min(limit, ratio);
      leaving = i;
    }
    if (leaving < 0) return true;
    this.exchange(leaving, entering);
    return false;
  }

  /** Entries of a column times the numbers from `from` on. */
  private worth(column: number, numbers: Float64Array, from: number): number {
    const { entries } = this;
    let worth = 0;
    const end = this.start[column + 1]!;
    for (let at = this.start[column]!; at < end; at++) {
      const row = entries[at]!;
      worth += row >= 0 ? numbers[from + row]! : -numbers[from + ~row]!;
    }
    this.work += 3;
    return worth;
  }

  /** `step` becomes what the basis gives up for one more of a column. */
  private fill(column: number): void {
    const { step, inverse } = this;
    const rows = step.length;
    for (let i = 0; i < rows; i++) {
      step[i] = column < 0 ? -inverse[i * rows - 1 - column]! : this.worth(column, inverse, i * rows);
    }
  }

  private exchange(leaving: number, entering: number): void {
    const { basis, level, inverse, prices, step } = this;
    const rows = level.length;
    const reduced = entering < 0 ? prices[-1 - entering]! : this.reducedCost(entering);
    this.fill(entering);
    const from = leaving * rows;
    const by = step[leaving]!;
    for (let j = 0; j < rows; j++) inverse[from + j]! /= by;
    level[leaving]! /= by;
    for (let i = 0; i < rows; i++) {
      const factor = step[i]!;
      if (i === leaving || (factor < 1e-12 && factor > -1e-12)) continue;
      const row = i * rows;
      for (let j = 0; j < rows; j++) inverse[row + j]! -= factor * inverse[from + j]!;
      level[i]! -= factor * level[leaving]!;
    }
    for (let j = 0; j < rows; j++) prices[j]! += reduced * inverse[from + j]!;
    basis[leaving] = entering;
    this.work += rows * rows;
    if (++this.exchanged % EXCHANGES === 0) this.renew();
  }

  /** The inverse from the basis itself. */
  private renew(): void {
    const { basis, level, inverse, prices, demand } = this;
    const rows = level.length;
    const matrix = new Float64Array(rows * rows);
    for (let i = 0; i < rows; i++) {
      const column = basis[i]!;
      if (column < 0) matrix[(-1 - column) * rows + i] = -1;
      else {
        for (let at = this.start[column]!; at < this.start[column + 1]!; at++) {
          const row = this.entries[at]!;
          if (row >= 0) matrix[row * rows + i]!++;
          else matrix[~row * rows + i]!--;
        }
      }
    }
    inverse.fill(0);
    for (let i = 0; i < rows; i++) inverse[i * rows + i] = 1;
    for (let c = 0; c < rows; c++) {
      let pivot = c;
      for (let i = c + 1; i < rows; i++) {
        if (Math.abs(matrix[i * rows + c]!) > Math.abs(matrix[pivot * rows + c]!)) pivot = i;
      }
      for (const numbers of [matrix, inverse]) {
        if (pivot !== c) {
          const kept = numbers.slice(c * rows, (c + 1) * rows);
          numbers.copyWithin(c * rows, pivot * rows, (pivot + 1) * rows);
          numbers.set(kept, pivot * rows);
        }
      }
      const by = matrix[c * rows + c]!;
      for (let j = 0; j < rows; j++) {
        matrix[c * rows + j]! /= by;
        inverse[c * rows + j]! /= by;
      }
      for (let i = 0; i < rows; i++) {
        const factor = matrix[i * rows + c]!;
        if (i === c || factor === 0) continue;
        for (let j = 0; j < rows; j++) {
          matrix[i * rows + j]! -= factor * matrix[c * rows + j]!;
          inverse[i * rows + j]! -= factor * inverse[c * rows + j]!;
        }
      }
    }
    for (let i = 0; i < rows; i++) {
      let sum = 0;
      for (let j = 0; j < rows; j++) sum += inverse[i * rows + j]! * demand[j]!;
      level[i] = sum;
      prices[i] = 0;
    }
    for (let i = 0; i < rows; i++) {
      const column = basis[i]!;
      const cost = column < 0 ? 0 : this.cost[column]!;
      if (cost !== 0) for (let j = 0; j < rows; j++) prices[j]! += cost * inverse[i * rows + j]!;
    }
    this.work += rows * rows * rows;
  }
}

function longer(numbers: Int32Array, least: number): Int32Array<ArrayBuffer> {
  const copy = new Int32Array(Math.max(2 * numbers.length, least));
  copy.set(numbers);
  return copy;
}
