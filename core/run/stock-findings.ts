import type { Finding } from '../finding';
import type { Job } from '../job/schema';
import type { JobCutting } from '../worked-out';

/** Stock of which the plan, with its spares, needs more than can be had. */
export function stockFindings(job: Job, { order }: Pick<JobCutting, 'order'>): Finding[] {
  return order.flatMap(({ stock: id, plan, spares }): Finding[] => {
    const stock = job.stock.find((one) => one.id === id);
    if (stock?.available === undefined || plan + spares <= stock.available) return [];
    const { available } = stock;
    const needs = spares > 0 ? `${plan} and ${spares} spare` : `${plan}`;
    const had = available === 0 ? 'none' : `only ${available}`;
    const mend =
      plan <= available
        ? 'take fewer spares or order more'
        : 'let its cut panels come from other stock too, lay other stock, or order more';
    return [
      {
        level: 'warning',
        code: 'stock-short',
        object: id,
        text: `Stock ${id}: the plan needs ${needs}, ${had} can be had; ${mend}.`,
      },
    ];
  });
}
