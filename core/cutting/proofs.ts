import type { BoundGroup } from './bounds/bound-part';
import { strongerBounds } from './bounds/stronger-bounds';
import { proveOrImprove } from './exact/prove-or-improve';
import type { Bounds } from './lower-bound';
import type { NestedSheet, NestTask } from './nest';

/** What no plan of a task undercuts, and a better plan where one came to light. */
export interface Proof {
  readonly bounds: Bounds;
  readonly sheets?: readonly NestedSheet[];
}

/**
 * Looks through every plan of a small task, then makes the bounds tighter. Each `next()` is one bounded step; ends when
 * it knows nothing more.
 *
 * @param best a plan that keeps to the stock that can be had, as far as any does
 * @param plan its figures, as the bounds count them
 * @param weighed what is known of the bounds
 */
export function* proofsOf(
  nestTask: NestTask,
  best: readonly NestedSheet[],
  plan: Bounds,
  weighed?: readonly BoundGroup[],
): Generator<Proof | undefined, void, void> {
  // Panels joined in pairs have fewer plans than they would have one by one: what holds for those proves nothing.
  if (!nestTask.single) yield* proveOrImprove(nestTask, best);
  const kinds = nestTask.single ?? nestTask.kinds;
  for (const bounds of strongerBounds(nestTask.task, kinds, plan, weighed)) yield { bounds };
}
