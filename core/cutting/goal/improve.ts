import type { NestedSheet, NestTask } from '../nest';
import type { Random } from '../random';
import { CutForest } from './cut-forest';
import { FastRandom } from './fast-random';
import { canBeHad, chargeOf, readGoalTask } from './goal-task';
import { plantSheets, writeSheets } from './goal-sheets';
import { Recreate } from './recreate';
import { closeEmptiest, ruin } from './ruin';

/** Work of one step, in the units of `Recreate`: one or two milliseconds. */
const STEP_WORK = 100_000;
/** Work that a turn costs besides. */
const TURN_WORK = 200;
/** How many turns the acceptance looks back. */
const HISTORY = 50;
/** After so many turns what is left out counts so much more. */
const WEIGH_TURNS = 16;
const WEIGH_SHARE = 0.002;

/**
 * Goal-driven ruin and recreate. Under a limit just below the charge of the best plan, sheets are filled as far as they
 * go and some panels stay out. Every turn takes a few nodes out of the trees of cuts and places them and what was out
 * anew; the outcome stays if less stays out, or as much with leftovers worth no less than some turns ago. What stays out
 * long counts more and more. Once nothing stays out the limit is lowered below the new plan.
 *
 * Yields once a step: a plan with a smaller charge than any before, or `undefined`. Never ends by itself, except when
 * nothing can be saved.
 *
 * Source: L. Gardeyn, T. Wauters, A goal-driven ruin and recreate heuristic for the 2D variable-sized bin packing problem
 * with guillotine constraints, European J. Operational Research 301 (2022) 432–444; pieces drawn tight, ruins of few
 * sheets and growing weights are our own.
 *
 * @param start a plan; only its panels are placed
 * @param outside other sheets, whose rack pieces and stock are taken
 */
export function* improveByGoal(
  nestTask: NestTask,
  start: readonly NestedSheet[],
  random: Random,
  outside: readonly NestedSheet[] = [],
): Generator<readonly NestedSheet[] | undefined, void, void> {
  if (start.length === 0) return;
  const goal = readGoalTask(nestTask, start, outside);
  const forest = new CutForest(goal);
  const run = new GoalRun(forest, new FastRandom(random() * 2 ** 32));
  if (canBeHad(goal, start)) {
    plantSheets(forest, start);
    run.aimBelow(chargeOf(goal, start));
  } else {
    // Any plan of sheets that can be had is better.
    const panels = goal.counts.reduce((sum, count) => sum + count, 0);
    run.aimBelow(panels * Math.max(...goal.formats.map(({ charge }) => charge)) + 1);
  }
  while (forest.limit > 0) yield run.step();
}

class GoalRun {
  private readonly recreate: Recreate;
  private out = Infinity;
  private worth = 0;
  private readonly worths = new Float64Array(HISTORY);
  private turn = 0;
  private untilWeighed = WEIGH_TURNS;

  constructor(
    private readonly forest: CutForest,
    private readonly random: FastRandom,
  ) {
    this.recreate = new Recreate(forest, random);
  }

  /** Sheets are closed until less than the charge is spent; what was on them is placed as far as it goes. */
  aimBelow(charge: number): void {
    const { forest } = this;
    forest.setLimit(charge - 1);
    closeEmptiest(forest);
    this.out = this.recreate.run(Infinity);
    this.worth = this.worthNow();
    this.worths.fill(this.worth);
    forest.keep();
  }

  step(): readonly NestedSheet[] | undefined {
    const { forest, recreate } = this;
    const until = recreate.work + STEP_WORK;
    let found: readonly NestedSheet[] | undefined;
    while (recreate.work < until && forest.limit > 0) {
      if (this.out > 0) this.takeTurn();
      if (this.out > 0) continue;
      found = writeSheets(forest);
      this.aimBelow(forest.spent);
    }
    return found;
  }

  private takeTurn(): void {
    const { forest, recreate, worths } = this;
    if (--this.untilWeighed === 0) {
      this.untilWeighed = WEIGH_TURNS;
      this.out = recreate.weighMore(WEIGH_SHARE);
    }
    ruin(forest, this.random);
    const out = recreate.run(this.out);
    const worth = this.worthNow();
    const isBetter =
      out < this.out || (out === this.out && (worth >= worths[this.turn]! || worth >= this.worth));
    if (isBetter) {
      this.out = out;
      this.worth = worth;
      forest.keep();
    } else forest.takeBack();
    worths[this.turn] = this.worth;
    this.turn = (this.turn + 1) % HISTORY;
    recreate.work += TURN_WORK;
  }

  private worthNow(): number {
    return this.forest.worth + this.forest.unopenedWorth();
  }
}
