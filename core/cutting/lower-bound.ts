import { runSteps, type Steps } from '../panels/pace';
import { boundGroups, sumOf, type BoundGroup, type Bounds } from './bounds/bound-part';
import type { PanelKind } from './kinds';
import type { CuttingTask } from './plan';
import { weigh } from './weighings';

export type { Bounds } from './bounds/bound-part';

/**
 * What no plan of this task can undercut, for its method, kerf and rack; quick, for the first plan. See
 * `bounds/stronger-bounds.ts` for more.
 *
 * Panels are weighed in many ways, each with a most that a stock sheet and a rack piece can carry: by true area
 * grown by half a kerf all round, and by products of dual feasible functions of the sides. The stock sheets must
 * carry the weight that the rack cannot.
 *
 * Cut freely, and wherever it has sloping edges, a panel that is no rectangle is weighed as rectangles inscribed in it,
 * so that whatever lies in its notches stays free. Cut edge to edge, a panel of level and upright edges first comes out as
 * its rectangle, and is weighed as that; panels that may lie in its notches are allowed for (see `bounds/notches.ts`).
 *
 * Kerf. Edge to edge, two rectangles are always a whole kerf apart in width or in height. Cut freely, and
 * beside panels with sloping edges, they may lie corner to corner, and only kerf/√2 is sure.
 *
 * @param plan figures of some plan for this task: once the bounds reach them, nothing higher is looked for. Only with
 * it do stock counts bind, and only if the plan keeps to them; a plan that does not may undercut the bounds
 */
export function boundsOf(task: CuttingTask, kinds: readonly PanelKind[], plan?: Bounds): Bounds {
  return sumOf(runSteps(weighedGroups(task, kinds, plan)));
}

/** What `boundsOf` sums up, with pauses. */
export function* weighedGroups(
  task: CuttingTask,
  kinds: readonly PanelKind[],
  plan?: Bounds,
): Steps<BoundGroup[]> {
  const groups = yield* boundGroups(task, kinds, plan);
  for (const { whole, apart } of groups) {
    for (const part of [whole, ...apart]) {
      if (part.isEmpty) continue;
      part.considerArea();
      if (part.isProved) continue;
      yield* weigh(part.sizes, part.carriers, part.formats.length, part.consider);
    }
  }
  return groups;
}
