import { enginesOf } from './engines';
import { sumOf } from './bounds/bound-part';
import { weighedGroups, type Bounds } from './lower-bound';
import { compare, measureSheets, patternsOf, type Measure } from './measure';
import type { NestedSheet, NestTask } from './nest';
import { nestWithRackInSteps } from './nest-with-rack';
import type { Steps } from '../panels/pace';
import type { CuttingSearch, CuttingSearchInSteps } from './plan';
import { seededRandom } from './random';
import { proofsOf } from './proofs';
import { renest } from './renest';
import { orderedRules } from './rules';
import { searchWithPairs } from './search-pairs';
import { drawn, writePlan, writePlanInSteps, type Drawings } from './write-plan';

/** Stock sheets drawn between pauses. */
const SHEETS_OF_A_PAUSE = 16;
/** Ways to nest a few stock sheets again that one step tries. */
const TRIES = 6;
/** A proved plan is polished (larger offcut, shorter cuts) until this many steps in a row changed nothing. */
const IDLE_STEPS = 40;
/** As long as a plan is not proved, one step in so many polishes it. */
const POLISH_EVERY = 12;

/**
 * The first step fills one stock sheet after the other under different rules and keeps the best. Later steps take turns
 * between engines that look for a plan with a smaller charge, proofs that none exists, and nesting a few stock sheets
 * again for larger offcuts and shorter cuts. Ends when a plan that is proved least possible has come to rest.
 *
 * @throws Error if a panel fits no stock sheet it may be cut from
 */
export const searchCutting: CuttingSearch = function* (task, seed) {
  for (const plan of searchCuttingInSteps(task, seed)) if (plan) yield plan;
};

/** The same, with pauses before the first plan. */
export const searchCuttingInSteps: CuttingSearchInSteps = (task, seed) =>
  searchWithPairs(task, seed, searchNest);

function* searchNest(nestTask: NestTask, seed: number): ReturnType<CuttingSearchInSteps> {
  const { task } = nestTask;
  if (task.panels.length === 0) {
    yield { sheets: [], newSheets: 0, lowerBound: 0, cost: 0, costLowerBound: 0 };
    return;
  }
  const drawings: Drawings = new WeakMap();
  const random = seededRandom(seed);
  const rules = orderedRules(nestTask);

  let best: readonly NestedSheet[] = [];
  let bestMeasure: Measure = [Infinity, Infinity, Infinity, Infinity, Infinity, Infinity];
  const take = (sheets: readonly NestedSheet[]): boolean => {
    const own = measureSheets(nestTask, sheets, drawings);
    // Mostly the figures before decide, and patterns need not be counted.
    if (compare(own, bestMeasure) > 0) return false;
    const all: Measure = [...own, patternsOf(nestTask, sheets, drawings)];
    if (compare(all, bestMeasure) >= 0) return false;
    best = sheets;
    bestMeasure = all;
    return true;
  };
  const takeFirst = function* (): Steps<void> {
    const sheets = yield* nestWithRackInSteps(nestTask, rules.shift()!);
    for (const [i, sheet] of sheets.entries()) {
      if (i % SHEETS_OF_A_PAUSE === SHEETS_OF_A_PAUSE - 1) yield undefined;
      drawn(drawings, nestTask, sheet);
    }
    take(sheets);
  };
  yield* takeFirst();
  const figures = () => ({ cost: bestMeasure[0], newSheets: bestMeasure[1] });
  const weighed = yield* weighedGroups(task, nestTask.single ?? nestTask.kinds, figures());
  const bounds = sumOf(weighed);
  const isWithin = ({ cost, newSheets }: Bounds) => bestMeasure[0] <= cost && bestMeasure[1] <= newSheets;
  for (let more = rulesAtOnce(nestTask) - 1; more > 0 && rules.length > 0 && !isWithin(bounds); more--) {
    yield* takeFirst();
  }
  let plan = yield* writePlanInSteps(nestTask, best, bounds, drawings);
  yield plan;

  let limits = bounds;
  const isProved = () => isWithin(limits);
  const proofs = proofsOf(nestTask, best, figures(), weighed);
  let mayProve = true;
  const engines = enginesOf(nestTask, random);
  /** Panels in each other's notches: nesting again is better at that than the engines. */
  const isFitted = task.method === 'free' && nestTask.kinds.some(({ isRectangle }) => !isRectangle);
  /** What engines improve on: a plan that differs in offcuts or cuts alone is no reason to begin anew. */
  let aim = { sheets: best, charge: bestMeasure.slice(0, 3) };
  const aimed = () => {
    if (compare(bestMeasure, aim.charge) < 0) aim = { sheets: best, charge: bestMeasure.slice(0, 3) };
    return aim.sheets;
  };
  let gathered = best;
  /** Takes a few sheets apart and nests them again; `polish` as in `renest`. */
  const nestAgain = (from: readonly NestedSheet[], polish: boolean) => {
    let current = from;
    for (let i = 0; i < TRIES; i++) {
      const changed = renest(nestTask, current, polish, random, drawings);
      if (!changed) continue;
      current = changed.sheets;
      if (!isProved()) engines.learn(changed.fresh);
      if (changed.measures === 'otherwise') take(current);
    }
    return current;
  };
  for (let step = 0, idle = 0; ; step++, idle++) {
    const before = best;
    const [cost, newSheets] = [limits.cost, limits.newSheets];
    const proved = isProved();
    if (proved && idle >= IDLE_STEPS) return;
    if (proved || step % POLISH_EVERY === POLISH_EVERY - 1) nestAgain(best, true);
    else if (step % 2 === 1 && mayProve) {
      const { value: proof, done } = proofs.next();
      if (done) mayProve = false;
      if (proof?.sheets) take(proof.sheets);
      if (proof) limits = atLeast(limits, proof.bounds);
    } else if (isFitted && step % 4 === 1) gathered = nestAgain(gathered, false);
    else {
      const better = engines.next(aimed());
      if (better && take(better)) gathered = best;
    }
    if (best !== before || cost !== limits.cost || newSheets !== limits.newSheets) {
      if (best !== before) idle = 0;
      plan = writePlan(nestTask, best, limits, drawings);
    }
    yield plan;
  }
}

function atLeast(a: Bounds, b: Bounds): Bounds {
  return { newSheets: Math.max(a.newSheets, b.newSheets), cost: Math.max(a.cost, b.cost) };
}

/** How many rules the first step tries: more for small tasks, so that it takes some milliseconds at most. */
function rulesAtOnce({ task, kinds }: NestTask): number {
  return Math.max(1, Math.min(8, Math.floor(45_000 / (task.panels.length * kinds.length + 1))));
}
