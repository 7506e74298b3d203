/** Longer lines are measured more coarsely, lengths rounded down: then more seems to fit, never less. */
const MOST_CELLS = 4000;

/**
 * The most that lengths in a line can be worth: each length several times, but no more often than it occurs. One
 * fill answers for every shorter line too.
 *
 * Exact where lengths have a common measure of at least 1/4000 of the longest line; otherwise never too little.
 */
export class LineKnapsack {
  /** Entries that one fill looks at. */
  readonly work: number;
  private readonly scale: number;
  private readonly best: Float64Array;
  private readonly parts: readonly { row: number; times: number; size: number; taken: Uint8Array }[];

  /**
   * @param lengths whole numbers, more than 0
   * @param limits how often each may lie in one line
   * @param longest the longest line that will be asked for
   */
  constructor(lengths: readonly number[], limits: readonly number[], longest: number) {
    const measure = lengths.reduce(commonMeasure, 0);
    this.scale = Math.max(measure, Math.ceil(longest / MOST_CELLS), 1);
    const cells = Math.floor(longest / this.scale);
    this.best = new Float64Array(cells + 1);
    this.parts = lengths.flatMap((length, row) => {
      const size = Math.floor(length / this.scale);
      let left = Math.min(limits[row]!, size === 0 ? Infinity : Math.floor(cells / size));
      const parts: { row: number; times: number; size: number; taken: Uint8Array }[] = [];
      // 1, 2, 4 … times and the rest: any number up to the limit is a sum of these.
      for (let times = 1; left > 0; times *= 2) {
        const own = Math.min(times, left);
        parts.push({ row, times: own, size: own * size, taken: new Uint8Array(cells + 1) });
        left -= own;
      }
      return parts;
    });
    this.work = this.parts.length * (cells + 1);
  }

  /** @param values what each length is worth; nothing below 0 is taken */
  fill(values: ArrayLike<number>): void {
    const { best } = this;
    best.fill(0);
    for (const { row, times, size, taken } of this.parts) {
      taken.fill(0);
      const value = values[row]! * times;
      if (value <= 0) continue;
      for (let cell = best.length - 1; cell >= size; cell--) {
        const other = best[cell - size]! + value;
        if (other > best[cell]!) {
          best[cell] = other;
          taken[cell] = 1;
        }
      }
    }
  }

  /** The most in a line of this length; 0 if the line is longer than was said. */
  most(line: number): number {
    return this.best[this.cell(line)] ?? 0;
  }

  /** Adds the lengths that are worth the most, each so often times `factor`. */
  addPattern(line: number, factor: number, counts: Float64Array): void {
    let cell = this.cell(line);
    for (let i = this.parts.length - 1; i >= 0; i--) {
      const { row, times, size, taken } = this.parts[i]!;
      if (!taken[cell]) continue;
      counts[row]! += factor * times;
      cell -= size;
    }
  }

  private cell(line: number): number {
    return Math.max(0, Math.floor(line / this.scale));
  }
}

function commonMeasure(a: number, b: number): number {
  while (b > 0) [a, b] = [b, a % b];
  return a;
}
