import { taskOf } from '../cutting/benchmark-instances';
import type { PackingInstance } from '../cutting/instance-file';
import { faultsOf } from '../cutting/verify-plan';
import type { CuttingMethod, DeliveryPlan } from '../../core/cutting/plan';
import { searchCutting } from '../../core/cutting/search';

/** Seconds since some moment: of the wall clock, or of this process at work (for busy machines). */
export type Clock = () => number;

export const clocks: Record<'wall' | 'cpu', Clock> = {
  wall: () => performance.now() / 1000,
  cpu: () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1e6;
  },
};

export interface SolvedInstance {
  readonly plates: number;
  readonly lower: number;
  readonly proved: boolean;
  /** ms until the last improvement of the number of plates, or the proof. */
  readonly ms: number;
  /** What the independent verifier found wrong with the plan; [] for a sound one. */
  readonly faults: readonly string[];
}

/** Searches until so many seconds are over or the number of plates is proved least; 0: the first plan only. */
export function solveInstance(
  instance: PackingInstance,
  method: CuttingMethod,
  seconds: number,
  clock: Clock,
): SolvedInstance {
  const task = taskOf(instance, method);
  const start = clock();
  const search = searchCutting(task, 1);
  const first = search.next();
  if (first.done) throw new Error('A cutting search gives a plan in its first step.');
  let plan: DeliveryPlan = first.value;
  let last = clock() - start;
  while (plan.newSheets > plan.lowerBound && clock() - start < seconds) {
    const next = search.next();
    if (next.done) break;
    const isNews = next.value.newSheets < plan.newSheets || next.value.lowerBound > plan.lowerBound;
    plan = next.value;
    if (isNews) last = clock() - start;
  }
  return {
    plates: plan.newSheets,
    lower: plan.lowerBound,
    proved: plan.newSheets === plan.lowerBound,
    ms: 1000 * last,
    faults: faultsOf(task, plan),
  };
}
