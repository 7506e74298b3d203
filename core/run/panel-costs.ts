import { countStockSheets } from '../cutting/count-stock-sheets';
import type { CuttingTask, StockFormat } from '../cutting/plan';
import { searchCutting } from '../cutting/search';
import type { Job, StockSheet } from '../job/schema';
import type { Steps } from '../panels/pace';
import type { PanelCost, PanelCosts, PricedPanel } from '../panels/panel-costs';
import { toHundredth } from '../units';
import { formatOf } from './stock-formats';
import { moneyInWords } from './whole-money';

/** Cutting steps for what some panels cost by themselves: enough to compare layouts, not for a cut list. */
const stepsToCompare = 8;

/**
 * What panels of these stock sheets cost, cut by themselves and from nothing but bought stock: what the rack
 * holds today must not move a zone's joints.
 */
export function panelCosts(job: Job, stock: readonly StockSheet[]): PanelCosts {
  const kerf = toHundredth(job.cutting.kerf);
  const formats = new Map(stock.map((one) => [one.id, comparable(formatOf(job, one), stock)]));
  const formatFor = (id: string): StockFormat => {
    const format = formats.get(id);
    if (!format) throw new Error(`Stock ${id} has no cost here.`);
    return format;
  };
  return {
    priceOf: (id) => formatFor(id).price,
    countOf: (id) => (cut) => countStockSheets(cut, formatFor(id), job.cutting.method, kerf),
    planCost: (panels) => planCost(job, [...formats.values()], panels),
    inWords: (cost) => (isPriced(stock) ? moneyInWords(cost, job.currency) : areaInWords(cost)),
  };
}

/** Stock sheets whose area is their price, where none of them has one: whole mm². */
function comparable(format: StockFormat, stock: readonly StockSheet[]): StockFormat {
  return isPriced(stock) ? format : { ...format, price: Math.round((format.width * format.height) / 1e4) };
}

function isPriced(stock: readonly StockSheet[]): boolean {
  return stock.some(({ price }) => price > 0);
}

function areaInWords(squareMm: number): string {
  return `${(squareMm / 1e6).toFixed(2)} m² of stock sheets`;
}

function* planCost(
  job: Job,
  stock: readonly StockFormat[],
  panels: readonly PricedPanel[],
): Steps<PanelCost> {
  const { method, kerf, leastOffcut } = job.cutting;
  const task: CuttingTask = {
    panels: panels.map(({ outline, stock: id }, i) => ({ mark: String(i), stock: [id], outline })),
    // As many as it takes: what can be had is a matter of the whole job.
    stock: stock.map(({ available: _, ...format }) => format),
    rack: [],
    method,
    kerf: toHundredth(kerf),
    leastOffcut: [toHundredth(leastOffcut[0]), toHundredth(leastOffcut[1])],
  };
  let cost: PanelCost = { cost: 0, stockSheets: 0 };
  const search = searchCutting(task, 1);
  for (let step = 0; step < stepsToCompare; step++) {
    const { value, done } = search.next();
    if (done) break;
    cost = { cost: value.cost, stockSheets: value.newSheets };
    yield;
  }
  return cost;
}
