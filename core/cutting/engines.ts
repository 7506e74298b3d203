import { improveFreely } from './free-goal/improve';
import { Fits } from './free-goal/fits';
import { readFreeTask } from './free-goal/free-task';
import { PricedSets } from './free-goal/priced-sets';
import { improveInParts } from './goal/improve-parts';
import type { NestedSheet, NestTask } from './nest';
import { createPool } from './pool/sheet-pool';
import { dive } from './pool/dive';
import { generate } from './pool/generate';
import { recombine } from './pool/recombine';
import { SetPool } from './pool/set-pool';
import type { Random } from './random';

type Engine = Generator<readonly NestedSheet[] | undefined, void, void>;

/** Cut freely, plans of more panels than this are improved edge to edge alone. */
const MOST_FREE_PANELS = 400;
/** Of the turns of an engine that may end, how many one that has ended sits out before it is begun anew. */
const REST = 40;

/** What looks for plans with a smaller charge, turn by turn. */
export interface Engines {
  /** One bounded step of the engine whose turn it is; a plan that it found better than the one it began from. */
  next(best: readonly NestedSheet[]): readonly NestedSheet[] | undefined;
  /** Remembers the sheets of a plan that others made. */
  learn(sheets: readonly NestedSheet[]): void;
}

/**
 * The engines for a task: edge to edge through trees of cuts, whose plans free cutting may use as well; freely; and by
 * putting together sheets that any of them ever made. All begin anew from a better plan as soon as there is one.
 */
export function enginesOf(nestTask: NestTask, random: Random): Engines {
  const pool = createPool(nestTask);
  const begin: ((best: readonly NestedSheet[]) => Engine)[] = [
    (best) => improveInParts(nestTask, best, random),
  ];
  const isFree = nestTask.task.method === 'free' && nestTask.task.panels.length <= MOST_FREE_PANELS;
  const sets = new SetPool(nestTask);
  if (isFree) begin.push((best) => improveFreely(nestTask, best, random, [], sets));
  else begin.push((best) => recombine(pool, best, random));
  if (isFree) {
    begin.push((best) => {
      const task = readFreeTask(nestTask, best, []);
      const priced = new PricedSets(task, new Fits(task, [], random, sets));
      return dive(sets, best, random, (from, prices) => priced.round(from, prices));
    });
  }
  if (!isFree) begin.push((best) => generate(nestTask, best, random));
  const running: (Engine | null)[] = begin.map(() => null);
  const resting = begin.map(() => 0);
  const learn = (sheets: readonly NestedSheet[]) => (isFree ? sets.learn(sheets) : pool.add(sheets));
  let from: readonly NestedSheet[] | null = null;
  let turn = 0;
  let sinceBetter = 0;
  return {
    next(best) {
      if (from !== best) {
        from = best;
        running.fill(null);
        resting.fill(0);
        sinceBetter = 0;
        if (isFree) sets.begin(best);
        else pool.add(best);
      }
      const turns = !isFree ? EDGE_TURNS : turn < EARLY ? FREE_TURNS : LATE_FREE_TURNS;
      let number = turns[turn++ % turns.length]!;
      if (!isFree && number === GENERATE && sinceBetter++ < EASY_TURNS) number = turns[0]!;
      const rests = resting[number]! > 0;
      if (rests) resting[number]!--;
      // Whoever has nothing to do leaves the turn to the first.
      if (rests || (isFree && number === DIVE && sets.isIdle && sets.come < sets.wanted)) {
        number = turns[0]!;
        if (resting[number]! > 0) return undefined;
      }
      const engine = (running[number] ??= begin[number]!(best));
      const { value, done } = engine.next();
      if (done) {
        running[number] = null;
        // Sheets made anew for the same plan would end the same way.
        resting[number] = !isFree && number === GENERATE ? Infinity : REST;
      } else if (value) learn(value);
      return value ?? undefined;
    },
    learn,
  };
}

/*
 * Numbers of the engines in the order of their turns.
 *
 * Edge to edge: 0 trees of cuts, 1 sheets that anyone made put together anew, 2 sheets made by prices.
 * Free: 0 trees of cuts, 1 ejection between sheets, 2 diving into the sets that fit.
 */
const EDGE_TURNS = Array.from({ length: 64 }, (_, turn) => (turn === 63 ? 1 : turn % 4 === 0 ? 0 : 2));
/** Edge to edge. */
const GENERATE = 2;
/** Its first turns after a better plan, which it leaves to the first engine: that finds what is easy sooner. */
const EASY_TURNS = 240;
/** Cut freely, what is easy shows at once; later it takes sets of panels that are put together. */
const FREE_TURNS = [1, 1, 1, 1, 1, 1, 1, 2];
const LATE_FREE_TURNS = [1, 2, 1, 2, 1, 2, 1, 0];
/** Turns after which it is late; about half a second. */
const EARLY = 200;
/** Free; it has nothing to do while no new sets of panels come. */
const DIVE = 2;
