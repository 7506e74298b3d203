import type { CuttingSearch, DeliveryPlan, RackOffcut } from '../cutting/plan';
import type { Delivery } from './deliveries';

interface Run {
  readonly rack: readonly RackOffcut[];
  readonly search: ReturnType<CuttingSearch>;
  readonly plan: DeliveryPlan;
  readonly steps: number;
  readonly ended: boolean;
}

const seed = 1;

/**
 * Plans the deliveries in their order; a rack piece that one of them uses is gone for those after it.
 *
 * Yields the plans of all deliveries as soon as each has its first one, again whenever one of them gets
 * better, and `undefined` at every other pause; returns the plans that `stepsOf` steps lead to. Where better
 * cutting of one delivery changes the rack that is left, the next one starts anew.
 */
export function* planDeliveries(
  deliveries: readonly Delivery[],
  rack: readonly RackOffcut[],
  search: CuttingSearch,
  stepsOf: (delivery: Delivery) => number,
): Generator<readonly DeliveryPlan[] | undefined, readonly DeliveryPlan[]> {
  const runs: Run[] = [];
  let left = rack;
  for (const delivery of deliveries) {
    const run = begin(delivery, left, search);
    runs.push(run);
    left = rackAfter(left, run.plan);
    yield undefined;
  }
  yield runs.map((run) => run.plan);

  left = rack;
  for (const [i, delivery] of deliveries.entries()) {
    let run = sameRack(runs[i]!.rack, left) ? runs[i]! : begin(delivery, left, search);
    runs[i] = run;
    const budget = stepsOf(delivery);
    while (run.steps < budget && !run.ended) {
      const next = step(run);
      const better = next.plan !== run.plan;
      run = next;
      runs[i] = run;
      yield better ? runs.map(({ plan }) => plan) : undefined;
    }
    left = rackAfter(left, run.plan);
  }
  return runs.map((run) => run.plan);
}

function begin(delivery: Delivery, rack: readonly RackOffcut[], searchCutting: CuttingSearch): Run {
  const search = searchCutting({ ...delivery.task, rack }, seed);
  const first = search.next();
  if (first.done) throw new Error('A cutting search gives a plan in its first step.');
  return { rack, search, plan: first.value, steps: 1, ended: false };
}

function step(run: Run): Run {
  const next = run.search.next();
  return next.done ? { ...run, ended: true } : { ...run, plan: next.value, steps: run.steps + 1 };
}

function rackAfter(rack: readonly RackOffcut[], plan: DeliveryPlan): readonly RackOffcut[] {
  const used = new Set(plan.sheets.map((planned) => planned.fromRack));
  return rack.filter((piece) => !used.has(piece.id));
}

function sameRack(a: readonly RackOffcut[], b: readonly RackOffcut[]): boolean {
  return a.length === b.length && a.every((piece, i) => piece.id === b[i]!.id);
}
