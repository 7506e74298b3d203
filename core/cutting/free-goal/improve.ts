import type { NestedSheet, NestTask } from '../nest';
import type { SetPool } from '../pool/set-pool';
import type { Random } from '../random';
import { Ejection } from './ejection';
import { Fits } from './fits';
import { formatOf, readFreeTask } from './free-task';
import { Sheets } from './sheets';

/** Work of one step, in trials; about a millisecond or two. */
const STEP_WORK = 8_000;

/**
 * Looks for plans with a smaller charge (money, then bought stock sheets, then rack pieces), cut freely. The limit is one
 * below the best plan: sheets are closed until the rest can be paid, and the panels left out are forced in, one after the
 * other, until nothing is left out; then the limit falls again.
 *
 * @param start a complete plan of its panels
 * @param outside other sheets of the plan, which stay as they are; their rack pieces and stock are taken
 * @param pool learns of every set of panels that fits
 * @returns every `next()` is one step and yields a plan better than any before, or undefined; ends when no sheet can
 *   be paid any more. The same for the same task, start and random numbers
 */
export function* improveFreely(
  nestTask: NestTask,
  start: readonly NestedSheet[],
  random: Random,
  outside: readonly NestedSheet[] = [],
  pool?: SetPool,
): Generator<readonly NestedSheet[] | undefined, void, void> {
  const task = readFreeTask(nestTask, start, outside);
  const fits = new Fits(task, start, random, pool);
  const sheets = new Sheets(task, fits);
  for (const sheet of start) {
    const s = sheets.open(formatOf(task, sheet));
    for (const { kind } of sheet.filled.places) sheets.add(s, kind);
  }
  const ejection = new Ejection(task, fits, sheets, random);
  ejection.until = fits.work + STEP_WORK;
  for (;;) {
    sheets.limit = sheets.spent - 1;
    ejection.closeSheets();
    if (task.formats.every(({ charge }) => charge > sheets.limit)) return;
    while (sheets.leftCount > 0) {
      const forcing = ejection.forceIn();
      while (!forcing.next().done) {
        yield undefined;
        ejection.until = fits.work + STEP_WORK;
      }
    }
    yield sheets.write();
    ejection.until = fits.work + STEP_WORK;
  }
}
