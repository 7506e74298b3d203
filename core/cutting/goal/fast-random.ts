/**
 * Whole random numbers for the innermost loops, the same for the same seed.
 * Source: G. Marsaglia, Xorshift RNGs, J. Statistical Software 8 (2003), the triple 13, 17, 5.
 */
export class FastRandom {
  private state: number;

  constructor(seed: number) {
    this.state = Math.floor(seed) | 0 || 0x2545f491;
  }

  /** From 0 up to, not including, `end` (at most 2^16 or so for an even spread). */
  below(end: number): number {
    let x = this.state;
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    this.state = x;
    return Math.floor(((x >>> 0) / 4294967296) * end);
  }

  /** In [0, 1). */
  share(): number {
    return this.below(4294967296) / 4294967296;
  }
}
