import { isRectilinear } from '../../geometry/polygon';
import type { PanelKind } from '../kinds';
import { weighedGroups } from '../lower-bound';
import type { CuttingTask } from '../plan';
import { sumOf, type BoundGroup, type BoundPart, type Bounds } from './bound-part';
import { improveCutWeights } from './cut-weights';
import { improveWeights } from './line-weights';

/**
 * Bounds that take longer than `boundsOf` and say more: the same weighings, then weights made for the panels at
 * hand (see `line-weights.ts`; for rectangles cut edge to edge first `cut-weights.ts`).
 *
 * Each `next()` is one step of a few milliseconds and yields the best bounds so far, never lower than before. It ends
 * by itself when it knows nothing more, or when the bounds reach `plan`.
 *
 * @param plan figures of some plan for this task; see `boundsOf` for what follows from it
 * @param weighed what `weighedGroups` found out, where that is known
 */
export function* strongerBounds(
  task: CuttingTask,
  kinds: readonly PanelKind[],
  plan?: Bounds,
  weighed?: readonly BoundGroup[],
): Generator<Bounds, void, void> {
  const groups = weighed ?? (yield* untilWeighed(task, kinds, plan));
  const parts = groups.flatMap(({ whole, apart }) => [whole, ...apart]).filter(({ isEmpty }) => !isEmpty);
  // A sloping edge leaves room in which others may lie that no cut across the sheet would part from it.
  const isCutInRectangles =
    task.method === 'edge-to-edge' &&
    kinds.every(({ isRectangle, poses }) => isRectangle || isRectilinear(poses[0]!.shape));
  for (const part of parts) {
    for (const { costs, known } of whatCounts(part)) {
      if (isReached()) return;
      const lines = { sizes: part.sizes, carriers: part.carriers, costs };
      if (isCutInRectangles && (yield* withSums(improveCutWeights(lines, part.consider, known)))) continue;
      yield* withSums(improveWeights(lines, part.consider));
    }
  }
  yield sumOf(groups);

  function* withSums<Result>(steps: Generator<void, Result, void>): Generator<Bounds, Result, void> {
    for (;;) {
      const { value, done } = steps.next();
      if (done) return value;
      yield sumOf(groups);
    }
  }

  function isReached(): boolean {
    const { newSheets, cost } = sumOf(groups);
    return plan !== undefined && newSheets >= plan.newSheets && cost >= plan.cost;
  }
}

function* untilWeighed(
  ...task: Parameters<typeof weighedGroups>
): Generator<Bounds, readonly BoundGroup[], void> {
  const weighing = weighedGroups(...task);
  for (;;) {
    const { value, done } = weighing.next();
    if (done) return value;
    yield { newSheets: 0, cost: 0 };
  }
}

/** The number of stock sheets, and their money where that is something else; and how much of it is sure by now. */
function whatCounts(part: BoundPart): { costs: number[]; known: () => number }[] {
  const number = { costs: part.formats.map(() => 1), known: () => part.newSheets };
  const money = { costs: part.formats.map(({ price }) => price), known: () => part.cost };
  const isOther = new Set(money.costs).size > 1 && money.costs.every((price) => price > 0);
  return isOther ? [number, money] : [number];
}
