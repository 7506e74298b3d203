import type { PanelKind } from '../kinds';
import { weighedGroups } from '../lower-bound';
import type { CuttingTask } from '../plan';
import { sumOf, type BoundGroup, type BoundPart, type Bounds } from './bound-part';
import { improveCutWeights } from './cut-weights';
import { improveWeights } from './line-weights';

/**
 * Bounds that take longer than `boundsOf` and say more: the same weighings, then weights made for the panels at
 * hand (see `line-weights.ts`; for rectangles cut edge to edge, `cut-weights.ts` too).
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
  const isCutInRectangles = task.method === 'edge-to-edge' && kinds.every(({ isRectangle }) => isRectangle);
  for (const improve of isCutInRectangles ? [improveWeights, improveCutWeights] : [improveWeights]) {
    for (const part of parts) {
      for (const costs of whatCounts(part)) {
        if (isReached()) return;
        const { sizes, carriers } = part;
        for (const step of improve({ sizes, carriers, costs }, part.consider)) yield step ?? sumOf(groups);
      }
    }
  }
  yield sumOf(groups);

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

/** The number of stock sheets, and their money where that is something else. */
function whatCounts({ formats }: BoundPart): number[][] {
  const number = formats.map(() => 1);
  const money = formats.map(({ price }) => price);
  return new Set(money).size > 1 && money.every((price) => price > 0) ? [number, money] : [number];
}
