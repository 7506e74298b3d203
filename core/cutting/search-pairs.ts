import { compare } from './measure';
import { readNestTaskInSteps, type NestTask } from './nest';
import type { CuttingTask, DeliveryPlan } from './plan';
import { pairedTask } from './slanted-pairs';
import { cutLength } from './trace-cuts';

/** Searches a task read once. */
export type NestSearch = (
  nestTask: NestTask,
  seed: number,
) => Generator<DeliveryPlan | undefined, void, void>;

/**
 * Where panels with sloping edges save room in pairs, two searches go step by step beside each other, one with the
 * pairs and one without, and the better plan counts: so it is never worse than by bounding rectangles. Otherwise it is
 * the one search alone.
 */
export function* searchWithPairs(
  task: CuttingTask,
  seed: number,
  search: NestSearch,
): Generator<DeliveryPlan | undefined, void, void> {
  const plain = yield* readNestTaskInSteps(task);
  const paired = pairedTask(plain);
  if (!paired) {
    yield* search(plain, seed);
    return;
  }
  let runs = [search(plain, seed), search(paired, seed)];
  let best: DeliveryPlan | null = null;
  let bestMeasure: readonly number[] = [];
  let firsts = yield* firstPlans(runs);
  while (runs.length > 0) {
    const before = firsts;
    firsts = [];
    runs = runs.filter((run, i) => {
      const { value, done } = before[i] ? { value: before[i], done: false } : run.next();
      if (done || !value) return false;
      if (value === best) return true;
      const own = measureOf(task, value);
      if (!best || compare(own, bestMeasure) < 0) [best, bestMeasure] = [value, own];
      // Once a plan is proved, a search that is behind in money or stock sheets only wastes time.
      const isProved = best.newSheets <= best.lowerBound && best.cost <= best.costLowerBound;
      return !isProved || (value.cost === best.cost && value.newSheets === best.newSheets);
    });
    if (runs.length === 0 || !best) return;
    yield best;
  }
}

function* firstPlans(
  runs: readonly ReturnType<NestSearch>[],
): Generator<undefined, (DeliveryPlan | undefined)[], void> {
  const plans: (DeliveryPlan | undefined)[] = [];
  for (const run of runs) {
    let next = run.next();
    for (; !next.done && !next.value; next = run.next()) yield undefined;
    plans.push(next.value ?? undefined);
  }
  return plans;
}

/** As plans are measured while they are nested, but for what cannot be had. */
function measureOf(task: CuttingTask, { sheets, newSheets, cost }: DeliveryPlan): readonly number[] {
  const racked = sheets.flatMap(({ fromRack }) => (fromRack === null ? [] : [fromRack]));
  const value = racked.reduce((sum, id) => sum + (task.rack.find((piece) => piece.id === id)?.value ?? 0), 0);
  let offcut = 0;
  let length = 0;
  for (const { offcuts, cuts } of sheets) {
    for (const { keep, width, height } of offcuts) if (keep) offcut = Math.max(offcut, width * height);
    length += Math.round(cuts.reduce((sum, cut) => sum + cutLength(cut), 0));
  }
  return [cost + value, newSheets, racked.length, -offcut, length];
}
