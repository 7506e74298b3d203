import { fillSheet } from '../fill-sheet';
import type { NestedSheet } from '../nest';
import type { Random } from '../random';
import { disturbedRule } from '../rules';
import { sizeOf } from '../write-plan';
import { chargesOf } from './charge';
import { Cover } from './cover';
import { dropSurplus } from './drop-surplus';
import type { PooledSheet, SheetPool } from './sheet-pool';

/** Turns of the search in one step; a few milliseconds. */
const WORK_OF_A_STEP = 30_000;
/** The search ends after this much work without a better plan. */
const MOST_WORK = 6_000_000;
/** Every so many turns what is still uncovered is tried on one sheet of its own. */
const TURNS_BETWEEN_FILLS = 12;
/** Uncovered panels that fill more than this share of a sheet are not tried on one. */
const MOST_SHARE = 0.99;

/**
 * Looks for sheets of the pool that together hold every panel and cost less than the best plan: set covering by a
 * local search. One sheet after another is exchanged; panels that stay uncovered for long weigh more and more.
 * Half of the time the search keeps one sheet less than it could, and tries to fill a fresh one with the rest.
 *
 * Source: the weighting of rows follows C. Gao, T. Weise, J. Li, An efficient local search heuristic with row
 * weighting for the unicost set covering problem, European J. Operational Research 246 (2015), from memory;
 * several of a kind, prices and stock counts are our addition.
 *
 * Each `next()` is one bounded step. It ends by itself when long nothing was found; begun anew, it sees what the
 * pool has learned since.
 *
 * @param best a complete plan; only what is charged less is ever yielded (see `chargesOf`)
 * @returns a complete plan, better than `best` and all yielded before, where one was found in this step
 */
export function* recombine(
  pool: SheetPool,
  best: readonly NestedSheet[],
  random: Random,
): Generator<readonly NestedSheet[] | undefined, void, void> {
  const { nestTask } = pool;
  const { task, kinds } = nestTask;
  const chargeOf = chargesOf(task);
  const charged = (sheets: readonly NestedSheet[]) =>
    sheets.reduce((sum, { stock, rack }) => sum + chargeOf(stock, rack), 0);
  let limit = charged(best);
  const demand = kinds.map(({ members }) => members.length);
  const cover = new Cover(usable(pool, limit), demand, task, random);
  if (!cover.coversAll()) return;
  let found: readonly NestedSheet[] | undefined;
  let idle = 0;
  const take = (sheets: readonly NestedSheet[]): void => {
    const surplus = demand.map((count) => -count);
    for (const { filled } of sheets) for (const { kind } of filled.places) surplus[kind]!++;
    const plan = dropSurplus(nestTask, sheets, surplus);
    if (!plan || charged(plan) >= limit) return;
    found = plan;
    idle = 0;
    limit = charged(plan);
    pool.add(plan);
  };
  for (let round = 0; ; round++) {
    // A fresh sheet for what is left over is paid for by the best-value format.
    const fresh = round % 2 === 0 ? -1 : Math.floor(random() * task.stock.length);
    const reserve = fresh < 0 ? 0 : chargeOf(fresh, -1);
    cover.open(limit - 1 - reserve);
    const turns = 400 + Math.floor(random() * 1200);
    for (let turn = 0; turn < turns; turn++) {
      cover.turn(limit - 1 - reserve);
      if (cover.uncovered === 0) take(cover.chosenSheets());
      else if (fresh >= 0 && turn % TURNS_BETWEEN_FILLS === 0) {
        const filled = fillWithRest(fresh);
        if (filled) take([...cover.chosenSheets(), filled]);
      }
      if (cover.work < WORK_OF_A_STEP) continue;
      idle += cover.work;
      cover.work = 0;
      yield found;
      found = undefined;
      if (idle > MOST_WORK) return;
    }
  }

  function fillWithRest(stock: number): NestedSheet | null {
    if (cover.chosenOf(stock) >= (task.stock[stock]!.available ?? Infinity)) return null;
    const sheet = { stock, rack: -1 };
    const { width, height } = sizeOf(nestTask, { ...sheet, filled: { places: [], spaces: [], area: 0 } });
    const rest = cover.rest();
    let area = 0;
    let panels = 0;
    for (const [kind, count] of rest.entries()) {
      if (count === 0) continue;
      if (!kinds[kind]!.allowed.includes(stock)) return null;
      area += count * kinds[kind]!.area;
      panels += count;
      if (area > MOST_SHARE * width * height && panels > 1) return null;
    }
    const members = rest.flatMap((count, kind) => (count > 0 ? [kind] : []));
    const { order, score, ways } = disturbedRule(nestTask, members, random);
    const edgeToEdge = task.method === 'edge-to-edge';
    cover.work += panels * panels * 100;
    const filled = fillSheet({ kinds, kerf: task.kerf, edgeToEdge, score, ways }, width, height, order, rest);
    return filled && rest.every((count) => count === 0) ? { ...sheet, filled } : null;
  }
}

function usable(pool: SheetPool, limit: number): PooledSheet[] {
  return pool.sheets.filter(({ charge }) => charge < limit);
}
