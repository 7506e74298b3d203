import { boundsOf } from './lower-bound';
import { compare, measure, type Measure } from './measure';
import { readNestTask, type NestedSheet, type NestTask } from './nest';
import { nestWithRack } from './nest-with-rack';
import type { CuttingSearch } from './plan';
import { seededRandom } from './random';
import { renest } from './renest';
import { disturbedRule, orderedRules } from './rules';
import { writePlan, type Drawings } from './write-plan';

/** Ways to nest a few stock sheets again that one step tries. */
const TRIES = 6;
/** A proved plan is polished (larger offcut, shorter cuts) until this many steps in a row changed nothing. */
const IDLE_STEPS = 60;
/** A plan that has not changed for this many steps is begun anew, if it is small enough to be. */
const STALE_STEPS = 25;
const FRESH_START_PANELS = 400;

/**
 * The first steps fill one stock sheet after the other under different rules and keep the best. Each later step
 * takes a few stock sheets apart, mostly emptier ones, and nests their panels again under a disturbed rule; what
 * came out no worse stays. Ends when the bounds prove cost and number least possible and polishing has come
 * to rest.
 *
 * @throws Error if a panel fits no stock sheet it may be cut from
 */
export const searchCutting: CuttingSearch = function* (task, seed): ReturnType<CuttingSearch> {
  if (task.panels.length === 0) {
    yield { sheets: [], newSheets: 0, lowerBound: 0, cost: 0, costLowerBound: 0 };
    return;
  }
  const nestTask = readNestTask(task);
  const drawings: Drawings = new WeakMap();
  const random = seededRandom(seed);
  const rules = orderedRules(nestTask);
  const everyKind = nestTask.kinds.map((_, kind) => kind);

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
  const bounds = boundsOf(task, nestTask.kinds, { cost: bestMeasure[0], newSheets: bestMeasure[1] });
  const isProved = () => bestMeasure[0] <= bounds.cost && bestMeasure[1] <= bounds.newSheets;
  for (let more = rulesAtOnce(nestTask) - 1; more > 0 && rules.length > 0 && !isProved(); more--) {
    take(nestWithRack(nestTask, rules.shift()!));
  }
  let plan = writePlan(nestTask, best, bounds, drawings);
  yield plan;

  let current = best;
  for (let idle = 0, stale = 0; ; idle++, stale++) {
    let improved = false;
    const proved = isProved();
    if (proved && idle >= IDLE_STEPS) return;
    const rule = rules.shift();
    if (rule && !proved) {
      improved = take(nestWithRack(nestTask, rule));
      if (improved) current = best;
    } else if (!proved && stale >= STALE_STEPS && task.panels.length <= FRESH_START_PANELS) {
      stale = 0;
      const fresh = nestWithRack(nestTask, disturbedRule(nestTask, everyKind, random));
      improved = take(fresh);
      const isClose = compare(measure(nestTask, fresh, drawings).slice(0, 3), bestMeasure.slice(0, 3)) <= 0;
      current = isClose ? fresh : best;
    } else {
      for (let i = 0; i < TRIES; i++) {
        const changed = renest(nestTask, current, proved, random, drawings);
        if (!changed) continue;
        current = changed;
        if (take(changed)) improved = true;
      }
    }
    if (improved) {
      idle = 0;
      stale = 0;
      plan = writePlan(nestTask, best, bounds, drawings);
    }
    yield plan;
  }
};

/** How many rules the first step tries: more for small tasks, so that it takes some milliseconds at most. */
function rulesAtOnce({ task, kinds }: NestTask): number {
  return Math.max(1, Math.min(8, Math.floor(45_000 / (task.panels.length * kinds.length + 1))));
}
