import { improveInParts } from './goal/improve-parts';
import { boundsOf } from './lower-bound';
import { compare, measure, type Measure } from './measure';
import type { NestedSheet, NestTask } from './nest';
import { nestWithRack } from './nest-with-rack';
import type { CuttingSearch } from './plan';
import { seededRandom } from './random';
import { renest } from './renest';
import { orderedRules } from './rules';
import { searchWithPairs } from './search-pairs';
import { writePlan, type Drawings } from './write-plan';

/** Ways to nest a few stock sheets again that one step tries. */
const TRIES = 6;
/** A proved plan is polished (larger offcut, shorter cuts) until this many steps in a row changed nothing. */
const IDLE_STEPS = 60;
/** As long as a plan is not proved, one step in so many polishes it. */
const POLISH_EVERY = 4;

/**
 * The first step fills one stock sheet after the other under different rules and keeps the best. Later steps look for a
 * plan with a smaller charge, edge to edge, which free cutting may use as well; cut freely, they also take a few stock
 * sheets apart in turn and nest their panels again. Once the bounds prove cost and number least possible, and now and
 * then before, sheets are nested again for larger offcuts and shorter cuts. Ends when a proved plan has come to rest.
 *
 * @throws Error if a panel fits no stock sheet it may be cut from
 */
export const searchCutting: CuttingSearch = (task, seed) => searchWithPairs(task, seed, searchNest);

function* searchNest(nestTask: NestTask, seed: number): ReturnType<CuttingSearch> {
  const { task } = nestTask;
  if (task.panels.length === 0) {
    yield { sheets: [], newSheets: 0, lowerBound: 0, cost: 0, costLowerBound: 0 };
    return;
  }
  const drawings: Drawings = new WeakMap();
  const random = seededRandom(seed);
  const rules = orderedRules(nestTask);

  let best: readonly NestedSheet[] = [];
  let bestMeasure: Measure = [Infinity, Infinity, Infinity, Infinity, Infinity];
  const take = (sheets: readonly NestedSheet[]): boolean => {
    const own = measure(nestTask, sheets, drawings);
    if (compare(own, bestMeasure) >= 0) return false;
    best = sheets;
    bestMeasure = own;
    return true;
  };
  take(nestWithRack(nestTask, rules.shift()!));
  const bounds = boundsOf(task, nestTask.single ?? nestTask.kinds, { cost: bestMeasure[0], newSheets: bestMeasure[1] });
  const isProved = () => bestMeasure[0] <= bounds.cost && bestMeasure[1] <= bounds.newSheets;
  for (let more = rulesAtOnce(nestTask) - 1; more > 0 && rules.length > 0 && !isProved(); more--) {
    take(nestWithRack(nestTask, rules.shift()!));
  }
  let plan = writePlan(nestTask, best, bounds, drawings);
  yield plan;

  const goal = improveInParts(nestTask, best, random);
  let gathered = best;
  /** Takes a few sheets apart and nests them again; `polish` as in `renest`. */
  const nestAgain = (from: readonly NestedSheet[], polish: boolean) => {
    let current = from;
    for (let i = 0; i < TRIES; i++) {
      const changed = renest(nestTask, current, polish, random, drawings);
      if (!changed) continue;
      current = changed;
      take(changed);
    }
    return current;
  };
  for (let step = 0, idle = 0; ; step++, idle++) {
    const before = best;
    const proved = isProved();
    if (proved && idle >= IDLE_STEPS) return;
    if (proved || step % POLISH_EVERY === POLISH_EVERY - 1) nestAgain(best, true);
    else if (task.method === 'free' && step % 2 === 1) gathered = nestAgain(gathered, false);
    else {
      const better = goal.next();
      if (better.value && take(better.value)) gathered = best;
    }
    if (best !== before) {
      idle = 0;
      plan = writePlan(nestTask, best, bounds, drawings);
    }
    yield plan;
  }
}

/** How many rules the first step tries: more for small tasks, so that it takes some milliseconds at most. */
function rulesAtOnce({ task, kinds }: NestTask): number {
  return Math.max(1, Math.min(8, Math.floor(45_000 / (task.panels.length * kinds.length + 1))));
}
