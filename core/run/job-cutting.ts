import type { DeliveryPlan, PlannedSheet } from '../cutting/plan';
import type { Steps } from '../panels/pace';
import type { Job } from '../job/schema';
import type { Delivery } from './deliveries';
import type { JobCutting, JobSheet } from '../worked-out';

const SHEETS_OF_A_STEP = 64;

/**
 * The plans of all deliveries as one: stock sheets numbered through, equal patterns found, the order counted. Pauses while
 * it reads stock sheets for the first time.
 */
export function* joinDeliveries(
  job: Job,
  deliveries: readonly Delivery[],
  plans: readonly DeliveryPlan[],
): Steps<JobCutting> {
  let read = 0;
  for (const { sheets } of plans) {
    for (const planned of sheets) {
      if (signatures.has(planned)) continue;
      signatureOf(planned);
      if (++read % SHEETS_OF_A_STEP === 0) yield undefined;
    }
  }
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
  const patterns = numberPatterns(plans.flatMap((plan) => plan.sheets));
  let bought = 0;
  return plans.flatMap((plan, i) =>
    plan.sheets.map((planned) => ({
      ...planned,
      id: planned.fromRack ?? `N${++bought}`,
      delivery: deliveries[i]!.name,
      pattern: patterns.get(signatureOf(planned))!,
    })),
  );
}

/** Patterns with cuts first, as only they are drawn: their numbers run without gaps. */
function numberPatterns(sheets: readonly PlannedSheet[]): Map<string, number> {
  const isCut = (planned: PlannedSheet) => planned.cuts.length > 0;
  const inOrder = [...sheets.filter(isCut), ...sheets.filter((planned) => !isCut(planned))];
  const patterns = new Map<string, number>();
  for (const planned of inOrder) {
    const signature = signatureOf(planned);
    if (!patterns.has(signature)) patterns.set(signature, patterns.size + 1);
  }
  return patterns;
}

/** Equal for stock sheets on which the same cuts yield the same shapes, turned alike, whatever their marks. */
function signatureOf(planned: PlannedSheet): string {
  let signature = signatures.get(planned);
  if (signature === undefined) signatures.set(planned, (signature = writeSignature(planned)));
  return signature;
}

/** Kept, as a better plan mostly has the same sheets. */
const signatures = new WeakMap<PlannedSheet, string>();

function writeSignature(planned: PlannedSheet): string {
  const shapes = planned.placements
    .map(({ outline, quarterTurns, turnedOver }) => JSON.stringify([outline, quarterTurns, turnedOver]))
    .sort();
  // A cut that opens a panel names it by its mark, which differs where the panel is the same.
  const cuts = planned.cuts.map(({ from, to, opens }) => [from, to, opens !== undefined]);
  return JSON.stringify([planned.stock, planned.width, planned.height, cuts, shapes]);
}

function hasOneStockPrice(deliveries: readonly Delivery[]): boolean {
  const prices = new Set<number>();
  for (const { task } of deliveries) {
    const used = new Set(task.panels.flatMap((panel) => panel.stock));
    for (const format of task.stock) if (used.has(format.id)) prices.add(format.price);
  }
  return prices.size <= 1;
}

/** Bought stock sheets of a plan, and the spares that go with them. */
export function orderOf(job: Job, sheets: readonly JobSheet[]): JobCutting['order'] {
  return job.stock.flatMap((stock) => {
    const plan = sheets.filter((planned) => planned.fromRack === null && planned.stock === stock.id).length;
    return plan > 0 ? [{ stock: stock.id, plan, spares: stock.spares }] : [];
  });
}
