/**
 * A small linear program: the least cost of columns that together cover a demand, each column as often as wanted and in any
 * fraction. Columns are entered one by one by whoever can price them (column generation): while a column is worth more
 * than it costs by `prices`, it lowers `value`.
 *
 * Nothing here needs to be exact: whoever takes a bound from `prices` must weigh it against what a column can be
 * worth at most (see `line-weights.ts`).
 *
 * Source: P. C. Gilmore, R. E. Gomory, A linear programming approach to the cutting-stock problem, Operations
 * Research 9 (1961), from memory: revised simplex with an explicit inverse.
 */
export class CoveringProgram {
  /** What one unit of each row is worth; never negative once `settle` has been called. */
  readonly prices: Float64Array;
  private readonly inverse: Float64Array;
  private readonly level: Float64Array;
  private readonly costs: Float64Array;
  private readonly step: Float64Array;
  private readonly rows: number;

  /**
   * @param demand of each row, more than 0
   * @param yields, costs of the columns it begins with: the one of row i holds `yields[i]` of row i and nothing else
   */
  constructor(demand: ArrayLike<number>, yields: ArrayLike<number>, costs: ArrayLike<number>) {
    const rows = demand.length;
    this.rows = rows;
    this.prices = new Float64Array(rows);
    this.inverse = new Float64Array(rows * rows);
    this.level = new Float64Array(rows);
    this.costs = Float64Array.from(costs);
    this.step = new Float64Array(rows);
    for (let i = 0; i < rows; i++) {
      this.inverse[i * rows + i] = 1 / yields[i]!;
      this.level[i] = demand[i]! / yields[i]!;
      this.prices[i] = costs[i]! / yields[i]!;
    }
  }

  /** The least cost with the columns entered so far. */
  get value(): number {
    let value = 0;
    for (let i = 0; i < this.rows; i++) value += this.costs[i]! * this.level[i]!;
    return value;
  }

  /**
   * Takes a column into the basis.
   *
   * @param counts what it holds of each row
   * @returns false if it would change nothing
   */
  enter(counts: ArrayLike<number>, cost: number): boolean {
    const { rows, inverse, step } = this;
    for (let i = 0; i < rows; i++) {
      let sum = 0;
      const row = i * rows;
      for (let j = 0; j < rows; j++) if (counts[j] !== 0) sum += inverse[row + j]! * counts[j]!;
      step[i] = sum;
    }
    let worth = 0;
    for (let j = 0; j < rows; j++) worth += this.prices[j]! * counts[j]!;
    return this.pivot(cost, worth);
  }

  /** Gives up what is covered twice until no row is worth less than nothing. */
  settle(most = 200): void {
    const { rows, inverse, step, prices } = this;
    for (let turn = 0; turn < most; turn++) {
      let worst = 0;
      for (let j = 1; j < rows; j++) if (prices[j]! < prices[worst]!) worst = j;
      if (prices[worst]! >= -LEAST) return;
      for (let i = 0; i < rows; i++) step[i] = -inverse[i * rows + worst]!;
      if (!this.pivot(0, -prices[worst]!)) return;
    }
  }

  private pivot(cost: number, worth: number): boolean {
    const { rows, inverse, level, step, prices } = this;
    if (worth - cost <= LEAST * Math.max(1, cost)) return false;
    let leaving = -1;
    let least = Infinity;
    for (let i = 0; i < rows; i++) {
      if (step[i]! <= LEAST) continue;
      const ratio = Math.max(0, level[i]!) / step[i]!;
      // Of those that run out together the one with the largest step keeps the inverse sound.
      if (ratio < least - LEAST || (ratio <= least + LEAST && step[i]! > step[leaving]!)) {
        leaving = i;
        least = Math.min(least, ratio);
      }
    }
    if (leaving < 0) return false;
    const pivot = step[leaving]!;
    const from = leaving * rows;
    for (let j = 0; j < rows; j++) inverse[from + j]! /= pivot;
    level[leaving] = Math.max(0, level[leaving]!) / pivot;
    for (let i = 0; i < rows; i++) {
      const factor = step[i]!;
      if (i === leaving || factor === 0) continue;
      const row = i * rows;
      for (let j = 0; j < rows; j++) inverse[row + j]! -= factor * inverse[from + j]!;
      level[i]! -= factor * level[leaving]!;
    }
    this.costs[leaving] = cost;
    const factor = worth - cost;
    for (let j = 0; j < rows; j++) prices[j]! -= factor * inverse[from + j]!;
    return true;
  }
}

const LEAST = 1e-9;
