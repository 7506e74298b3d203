/**
 * Says when a search pauses, so that its caller can stop or listen: by the work done, not by a clock, so that
 * everyone gets the same answer.
 */
export interface Pace {
  /** @param work one is what it takes to look at a cell that no sloping edge passes through: some 0.2 µs */
  spend(work: number): void;
  /** True once whenever a millisecond or two of work is done. */
  isDue(): boolean;
}

const workBetweenPauses = 4_000;

export function createPace(): Pace {
  let spent = 0;
  return {
    spend(work) {
      spent += work;
    },
    isDue() {
      if (spent < workBetweenPauses) return false;
      spent = 0;
      return true;
    },
  };
}

/** Work that pauses: `undefined` at every pause, then what it leads to. */
export type Steps<Result> = Generator<undefined, Result, void>;

/** Runs paused work to its end. */
export function runSteps<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const { value, done } = steps.next();
    if (done) return value;
  }
}
