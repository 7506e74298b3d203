import type { NestedSheet, NestTask } from '../nest';
import type { Random } from '../random';
import { PricedSheets } from './priced-sheets';
import { SheetProgram } from './sheet-program';

/** Fillings that a program begins with, and those in a row that may add nothing before it counts as settled. */
const SEEDS = 25;
const PATIENCE = 3;
/** Fillings after each of which a dive goes on if it still may come within the limit. */
const FILLINGS_OF_A_DIVE = 12;
/** A program of more sheets than this is slow: it is begun anew. */
const MOST_SHEETS = 6000;
/** What is taken whole is drawn by this power of the part that the program takes. */
const GREED = 5;
const ROUND = 1e-6;

/**
 * Makes sheets for a plan with a smaller charge: a linear program over the sheets at hand says what every panel is worth,
 * sheets worth more than they cost are made by these prices and enter it, and so on. Once the program comes within the
 * limit, sheets that it takes in part are taken whole one after the other, and new ones are made for what is left
 * wherever the program rises above the limit.
 *
 * Ends at once where sheets cannot be priced (see `PricedSheets.of`), and once the program has settled above the limit: then
 * better sheets are hard to find, or there is no better plan. It proves nothing.
 *
 * Source: column generation as in P. C. Gilmore, R. E. Gomory, A linear programming approach to the cutting-stock problem,
 * Operations Research 9 (1961); diving with columns made on the way as in R. Sadykov, F. Vanderbeck, A. Pessoa, I. Tahiri,
 * E. Uchoa, Primal heuristics for branch and price, INFORMS J. Computing 31 (2019); both from memory.
 *
 * @param best a complete plan; only what is charged less is ever yielded
 * @returns every `next()` is one bounded step
 */
export function* generate(
  nestTask: NestTask,
  best: readonly NestedSheet[],
  random: Random,
): Generator<readonly NestedSheet[] | undefined, void, void> {
  const priced = PricedSheets.of(nestTask);
  if (!priced) return;
  for (;;) {
    const program = new SheetProgram(nestTask, priced, best, random);
    if (!(yield* program.begin(SEEDS))) return;
    yield* program.settle(Infinity, PATIENCE);
    if (program.value > program.limit) return;
    while (program.count < MOST_SHEETS) {
      const plan = yield* dive(program, random);
      yield plan ?? undefined;
      if (plan) return;
    }
  }
}

/** @returns a plan within the limit, where the dive ends in one */
function* dive(
  program: SheetProgram,
  random: Random,
): Generator<undefined, readonly NestedSheet[] | null, void> {
  yield* program.improve();
  program.save();
  let plan: readonly NestedSheet[] | null = null;
  while (yield* program.repair()) {
    if (program.value > program.limit) yield* program.settle(FILLINGS_OF_A_DIVE, PATIENCE);
    if (program.value > program.limit) break;
    const parts = program.parts();
    if (parts.length === 0) {
      plan = program.written();
      break;
    }
    const whole = parts.filter(([, part]) => part > 1 - ROUND);
    for (const [column] of whole.length > 0 ? whole : [drawn(parts, random)]) program.fix(column);
  }
  program.restore();
  return plan;
}

type Part = readonly [column: number, part: number];

function drawn(parts: readonly Part[], random: Random): Part {
  let draw = random() * parts.reduce((sum, [, part]) => sum + part ** GREED, 0);
  return parts.find(([, part]) => (draw -= part ** GREED) <= 0) ?? parts[0]!;
}
