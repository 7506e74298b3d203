import type { DeliveryPlan, PlannedSheet } from '../cutting/plan';
import type { Job } from '../job/schema';
import type { Delivery } from './deliveries';
import type { JobCutting, JobSheet } from '../worked-out';

/** The plans of all deliveries as one: stock sheets numbered through, equal patterns found, the order counted. */
export function joinDeliveries(
  job: Job,
  deliveries: readonly Delivery[],
  plans: readonly DeliveryPlan[],
): JobCutting {
  const sheets = numberSheets(deliveries, plans);
  const total = (figure: (plan: DeliveryPlan) => number) =>
    plans.reduce((sum, plan) => sum + figure(plan), 0);
  const newSheets = total((plan) => plan.newSheets);
  const lowerBound = total((plan) => plan.lowerBound);
  const cost = total((plan) => plan.cost);
  const costLowerBound = total((plan) => plan.costLowerBound);
  return {
    sheets,
    newSheets,
    lowerBound,
    cost,
    costLowerBound,
    leastPossible: hasOneStockPrice(deliveries) ? newSheets === lowerBound : cost === costLowerBound,
    order: orderOf(job, sheets),
  };
}

function numberSheets(deliveries: readonly Delivery[], plans: readonly DeliveryPlan[]): JobSheet[] {
  const patterns = new Map<string, number>();
  let bought = 0;
  return plans.flatMap((plan, i) =>
    plan.sheets.map((planned) => {
      const cutting = signatureOf(planned);
      const pattern = patterns.get(cutting) ?? patterns.size + 1;
      patterns.set(cutting, pattern);
      const id = planned.fromRack ?? `N${++bought}`;
      return { ...planned, id, delivery: deliveries[i]!.name, pattern };
    }),
  );
}

/** Equal for stock sheets on which the same cuts yield the same shapes, whatever their marks. */
function signatureOf(planned: PlannedSheet): string {
  const shapes = planned.placements.map(({ outline }) => JSON.stringify(outline)).sort();
  return JSON.stringify([planned.stock, planned.width, planned.height, planned.cuts, shapes]);
}

function hasOneStockPrice(deliveries: readonly Delivery[]): boolean {
  const prices = new Set<number>();
  for (const { task } of deliveries) {
    const used = new Set(task.panels.flatMap((panel) => panel.stock));
    for (const format of task.stock) if (used.has(format.id)) prices.add(format.price);
  }
  return prices.size <= 1;
}

function orderOf(job: Job, sheets: readonly JobSheet[]): JobCutting['order'] {
  return job.stock.flatMap((stock) => {
    const plan = sheets.filter((planned) => planned.fromRack === null && planned.stock === stock.id).length;
    return plan > 0 ? [{ stock: stock.id, plan, spares: stock.spares }] : [];
  });
}
