import { runSteps, type Steps } from '../panels/pace';

/*
 * Dual feasible functions: f maps lengths to numbers such that lengths which together fit in C never add up to
 * more than f(C). Counted by such functions instead of by their length, panels that waste much count for more.
 *
 * Sources: S. P. Fekete, J. Schepers, New classes of fast lower bounds for bin packing problems, Mathematical
 * Programming 91 (2001), for rounding and threshold; J. Carlier, F. Clautiaux, A. Moukrim, New reduction
 * procedures and lower bounds for the two-dimensional bin packing problem with fixed orientation, Computers &
 * Operations Research 34 (2007), for counting (their f₂ᵏ). Written from memory of those papers; that every one
 * of them is superadditive is held by a test.
 *
 * All are superadditive on 0 … C (f(a) + f(b) ≤ f(a + b)), so they bound what fits in a shorter length too.
 */

export interface DualFeasible {
  /** The length C it was made for. */
  readonly length: number;
  /** For whole x from 0 to C. */
  readonly at: (x: number) => number;
}

const FUNCTIONS_OF_A_STEP = 16;
/** Rounding goes up to this many steps. */
const MOST_STEPS = 100;
/** On a plate this short every threshold and every step is tried. */
const SHORT = 150;
/** Thresholds, and steps, taken from the lengths of a longer plate. */
const MOST_TAKEN = 60;

/** Functions worth trying for these lengths in C, the most promising first; no two alike on them. */
export function dualFeasibleFunctions(length: number, lengths: readonly number[]): DualFeasible[] {
  return runSteps(dualFeasibleInSteps(length, lengths));
}

/** The same, with pauses. */
export function* dualFeasibleInSteps(length: number, lengths: readonly number[]): Steps<DualFeasible[]> {
  const present = [...new Set(lengths)].filter((x) => x > 0 && x <= length).sort((a, b) => a - b);
  const functions = [identity(length)];
  const taken = parameters(length, present);
  for (const least of taken) functions.push(threshold(length, least));
  for (const step of taken) functions.push(counting(length, step));
  const mostSteps = Math.min(MOST_STEPS, length - 1, Math.floor(length / (present[0] ?? length)) + 1);
  for (let steps = 1; steps <= mostSteps; steps++) functions.push(rounding(length, steps));
  return yield* strongestFirst(functions, present);
}

/** Without those that say nothing or the same as another; those that count most in all come first. */
function* strongestFirst(
  functions: readonly DualFeasible[],
  present: readonly number[],
): Steps<DualFeasible[]> {
  const seen = new Set<number>();
  const ranked: { dual: DualFeasible; sum: number }[] = [];
  for (const [i, dual] of functions.entries()) {
    if (i % FUNCTIONS_OF_A_STEP === FUNCTIONS_OF_A_STEP - 1) yield undefined;
    const full = dual.at(dual.length);
    if (full <= 0) continue;
    let sum = 0;
    let mark = 0;
    for (const x of present) {
      const share = dual.at(x) / full;
      sum += share;
      // Two functions with one mark by accident would only cost a weighing, never the truth of the bound.
      mark = (mark * 31 + Math.round(share * 1e6) * 7919) % 2147483647;
    }
    if (seen.has(mark)) continue;
    seen.add(mark);
    ranked.push({ dual, sum });
  }
  return ranked.sort((a, b) => b.sum - a.sum).map(({ dual }) => dual);
}

/** Thresholds and steps up to C/2. What a function says changes only at lengths that occur and at their gaps. */
function parameters(length: number, present: readonly number[]): number[] {
  const half = Math.floor(length / 2);
  if (length <= SHORT) return Array.from({ length: half }, (_, i) => i + 1);
  const values = new Set<number>();
  for (const x of present) {
    for (const value of [x, x + 1, length - x, length - x + 1])
      if (value >= 1 && value <= half) values.add(value);
  }
  const sorted = [...values].sort((a, b) => a - b);
  if (sorted.length <= MOST_TAKEN) return sorted;
  return Array.from({ length: MOST_TAKEN }, (_, i) => sorted[Math.floor((i * sorted.length) / MOST_TAKEN)]!);
}

export function identity(length: number): DualFeasible {
  return { length, at: (x) => x };
}

/** Down to multiples of C/(k + 1), measured in them; whole multiples count k/(k + 1) each. */
export function rounding(length: number, k: number): DualFeasible {
  return {
    length,
    at: (x) => {
      const scaled = (k + 1) * x;
      return scaled % length === 0 ? (scaled / length) * k : Math.floor(scaled / length) * (k + 1);
    },
  };
}

/** Shorter than `least` counts nothing, longer than C − `least` counts the whole of C. `least` ≤ C/2. */
export function threshold(length: number, least: number): DualFeasible {
  return { length, at: (x) => (x > length - least ? length : x < least ? 0 : x) };
}

/** How many steps fit, doubled; lengths above C/2 through the gap they leave. `step` ≤ C/2. */
export function counting(length: number, step: number): DualFeasible {
  const all = Math.floor(length / step);
  return {
    length,
    at: (x) => {
      if (2 * x > length) return 2 * (all - Math.floor((length - x) / step));
      return 2 * x === length ? all : 2 * Math.floor(x / step);
    },
  };
}
