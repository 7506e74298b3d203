import type { CuttingSearchInSteps, DeliveryPlan, RackOffcut, StockFormat } from '../cutting/plan';
import type { Delivery } from './deliveries';

/** What the deliveries before leave: rack pieces, and how many of the limited stock can still be had, by its id. */
interface Supply {
  readonly rack: readonly RackOffcut[];
  readonly available: ReadonlyMap<string, number>;
}

interface Run {
  readonly supply: Supply;
  readonly search: ReturnType<CuttingSearchInSteps>;
  readonly plan: DeliveryPlan;
  readonly steps: number;
  readonly ended: boolean;
}

const seed = 1;

/**
 * Plans the deliveries in their order; a rack piece that one of them uses is gone for those after it, and so are
 * stock sheets of which only some can be had.
 *
 * Yields the plans of all deliveries as soon as each has its first one, again whenever one of them gets
 * better, and `undefined` at every other pause; returns the plans that `stepsOf` steps lead to. Where better
 * cutting of one delivery changes what is left, the next one starts anew.
 */
export function* planDeliveries(
  deliveries: readonly Delivery[],
  rack: readonly RackOffcut[],
  search: CuttingSearchInSteps,
  stepsOf: (delivery: Delivery) => number,
): Generator<readonly DeliveryPlan[] | undefined, readonly DeliveryPlan[]> {
  const runs: Run[] = [];
  const whole: Supply = { rack, available: limitsOf(deliveries) };
  let left = whole;
  for (const delivery of deliveries) {
    const run = yield* begin(delivery, left, search);
    runs.push(run);
    left = supplyAfter(left, run.plan);
    yield undefined;
  }
  yield runs.map((run) => run.plan);

  left = whole;
  for (const [i, delivery] of deliveries.entries()) {
    let run = sameSupply(runs[i]!.supply, left) ? runs[i]! : yield* begin(delivery, left, search);
    runs[i] = run;
    const budget = stepsOf(delivery);
    while (run.steps < budget && !run.ended) {
      const next = step(run);
      const better = next.plan !== run.plan;
      run = next;
      runs[i] = run;
      yield better ? runs.map(({ plan }) => plan) : undefined;
    }
    left = supplyAfter(left, run.plan);
  }
  return runs.map((run) => run.plan);
}

function* begin(
  { task }: Delivery,
  supply: Supply,
  searchCutting: CuttingSearchInSteps,
): Generator<undefined, Run, void> {
  const stock = task.stock.map((format): StockFormat => {
    const available = supply.available.get(format.id);
    return available === undefined ? format : { ...format, available };
  });
  const search = searchCutting({ ...task, stock, rack: supply.rack }, seed);
  let first = search.next();
  for (; !first.done && !first.value; first = search.next()) yield undefined;
  if (!first.value) throw new Error('A cutting search gives a plan before it ends.');
  return { supply, search, plan: first.value, steps: 1, ended: false };
}

function step(run: Run): Run {
  const { value, done } = run.search.next();
  return done ? { ...run, ended: true } : { ...run, plan: value ?? run.plan, steps: run.steps + 1 };
}

function limitsOf(deliveries: readonly Delivery[]): Map<string, number> {
  const formats = deliveries.flatMap(({ task }) => task.stock);
  return new Map(
    formats.flatMap(({ id, available }) => (available === undefined ? [] : [[id, available] as const])),
  );
}

function supplyAfter({ rack, available }: Supply, plan: DeliveryPlan): Supply {
  const used = new Set(plan.sheets.map(({ fromRack }) => fromRack));
  const bought = (stock: string) =>
    plan.sheets.filter((planned) => planned.fromRack === null && planned.stock === stock).length;
  return {
    rack: rack.filter((piece) => !used.has(piece.id)),
    available: new Map([...available].map(([stock, count]) => [stock, Math.max(0, count - bought(stock))])),
  };
}

function sameSupply(a: Supply, b: Supply): boolean {
  return (
    a.rack.length === b.rack.length &&
    a.rack.every((piece, i) => piece.id === b.rack[i]!.id) &&
    [...a.available].every(([stock, count]) => count === b.available.get(stock))
  );
}
