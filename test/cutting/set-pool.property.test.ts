import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Fits } from '../../core/cutting/free-goal/fits';
import { readFreeTask } from '../../core/cutting/free-goal/free-task';
import { PricedSets } from '../../core/cutting/free-goal/priced-sets';
import { nest, readNestTask, type NestedSheet, type NestTask } from '../../core/cutting/nest';
import { chargesOf } from '../../core/cutting/pool/charge';
import { dive, type MakeSets } from '../../core/cutting/pool/dive';
import { FractionalCover } from '../../core/cutting/pool/fractional-cover';
import { SetPool } from '../../core/cutting/pool/set-pool';
import { seededRandom, type Random } from '../../core/cutting/random';
import { disturbedRule } from '../../core/cutting/rules';
import { writePlan } from '../../core/cutting/write-plan';
import { randomTasks } from './random-tasks';
import { faultsOf } from './verify-plan';

const chargeOf = ({ task }: NestTask, sheets: readonly NestedSheet[]) =>
  sheets.reduce((sum, { stock, rack }) => sum + chargesOf(task)(stock, rack), 0);

describe('plans put together from sets of panels', () => {
  test('hold every panel once, soundly, and cost less than the best', () => {
    expect(betterPlans(12, () => undefined)).toBeGreaterThan(5);
  });

  test('do so as well where sets are made by their prices alone', () => {
    const makerOf = (pool: SetPool, worst: readonly NestedSheet[], random: Random): MakeSets => {
      const task = readFreeTask(pool.nestTask, worst, []);
      const priced = new PricedSets(task, new Fits(task, [], random, pool));
      return (sets, prices) => priced.round(sets, prices);
    };
    expect(betterPlans(1, makerOf)).toBeGreaterThan(0);
  });
});

/** How many plans better than the worst come of the stock sheets of some plans; each is checked. */
function betterPlans(
  count: number,
  makerOf: (pool: SetPool, worst: readonly NestedSheet[], random: Random) => MakeSets | undefined,
): number {
  let better = 0;
  fc.assert(
    fc.property(randomTasks('free'), fc.integer(), (task, seed) => {
      const nestTask = readNestTask(task);
      const random = seededRandom(seed);
      const everyKind = nestTask.kinds.map((_, kind) => kind);
      const plans = Array.from({ length: count }, () =>
        nest(
          nestTask,
          disturbedRule(nestTask, everyKind, random),
          nestTask.kinds.map(({ members }) => members.length),
          random() < 0.5 ? [] : task.rack.map((_, piece) => piece),
        ),
      );
      const worst = plans.reduce((a, b) => (chargeOf(nestTask, b) > chargeOf(nestTask, a) ? b : a));
      const pool = new SetPool(nestTask);
      pool.begin(worst);
      pool.learn(plans.flat());
      let steps = 0;
      for (const found of dive(pool, worst, random, makerOf(pool, worst, random))) {
        if (found) {
          expect(chargeOf(nestTask, found)).toBeLessThan(chargeOf(nestTask, worst));
          const plan = writePlan(nestTask, found, { newSheets: 0, cost: 0 }, new WeakMap());
          expect(faultsOf(task, plan)).toEqual([]);
          better++;
        }
        if (++steps > 5) break;
      }
    }),
    { numRuns: 25, seed: 5 },
  );
  return better;
}

/*
 * By the duality of linear programs (J. von Neumann; in any textbook) a cover is cheapest if it holds the demand and the
 * prices, which make no column worth more than it costs, sum to the same cost.
 */
describe('a fractional cover', () => {
  const columns = fc.array(fc.uniqueArray(fc.integer({ min: 0, max: 5 }), { minLength: 1 }), {
    maxLength: 20,
  });

  test('is proved cheapest by its own prices, before and after columns are fixed', () => {
    fc.assert(
      fc.property(
        columns,
        fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 6, maxLength: 6 }),
        (some, demand) => {
          const all = [...demand.map((_, row) => [row]), ...some];
          const costOf = (column: number) => 1 + (column % 3) / 4;
          const program = new FractionalCover(demand);
          all.forEach((rows, column) => program.add(rows, costOf(column)));
          const numbers = Int32Array.from(all, (_, column) => column);
          const own = numbers.subarray(0, 6);
          while (program.repair(own, own.length) === 0);
          while (!program.improve(numbers, numbers.length));
          const left = [...demand];
          for (let fixed = 0; fixed < 3; fixed++) {
            const covered = left.map(() => 0);
            let cost = 0;
            program.basis.forEach((column, place) => {
              expect(program.level[place]).toBeGreaterThan(-1e-6);
              if (column < 0) return;
              cost += costOf(column) * program.level[place]!;
              for (const row of all[column]!) covered[row]! += program.level[place]!;
            });
            covered.forEach((sum, row) => expect(sum).toBeGreaterThan(left[row]! - 1e-6));
            for (const price of program.prices) expect(price).toBeGreaterThan(-1e-6);
            all.forEach((rows, column) => {
              const worth = rows.reduce((sum, row) => sum + program.prices[row]!, 0);
              expect(worth).toBeLessThan(costOf(column) + 1e-6);
            });
            expect(left.reduce((sum, wanted, row) => sum + wanted * program.prices[row]!, 0)).toBeCloseTo(
              cost,
              5,
            );
            const column = (7 * fixed + all.length) % all.length;
            program.fix(column);
            for (const row of all[column]!) left[row]!--;
            while (program.repair(numbers, numbers.length) === 0);
          }
        },
      ),
      { numRuns: 200, seed: 3 },
    );
  });
});
