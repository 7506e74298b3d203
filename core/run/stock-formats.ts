import type { RackOffcut, StockFormat } from '../cutting/plan';
import { toMinorUnits } from './whole-money';
import type { Job, StockSheet } from '../job/schema';
import { hasTrim, trimOf, usableSize } from '../job/usable-size';
import { toHundredth } from '../units';

/** A stock sheet in the cutting stage's units: hundredths, whole minor units of the job's currency. */
export function formatOf(job: Job, stock: StockSheet): StockFormat {
  return {
    id: stock.id,
    ...usableSize(stock),
    ...(hasTrim(stock) && { trim: trimOf(stock) }),
    price: toMinorUnits(stock.price, job.currency),
    hasFace: stock.hasFace,
    ...(stock.available !== undefined && { available: stock.available }),
  };
}

export function rackOf(job: Job): RackOffcut[] {
  return job.rack.map(({ id, stock, width, height, value }) => ({
    id,
    stock,
    width: toHundredth(width),
    height: toHundredth(height),
    ...(value !== undefined && { value: toMinorUnits(value, job.currency) }),
  }));
}
