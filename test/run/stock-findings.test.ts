import { describe, expect, test } from 'vitest';
import { demoJob } from '../../core/job/demo';
import { workOutFully } from '../../core/run/pipeline';
import { stockFindings } from '../../core/run/stock-findings';

const job = demoJob();
const [first] = job.stock as [(typeof job.stock)[0]];
const withStock = (available: number, spares: number) => ({
  ...job,
  stock: [{ ...first, available, spares }, ...job.stock.slice(1)],
});
const textOf = (available: number, plan: number, spares = 0) =>
  stockFindings(withStock(available, spares), { order: [{ stock: first.id, plan, spares }] }).map(
    ({ text }) => text,
  );

describe('stock of which the plan needs more than can be had', () => {
  test('is named with both numbers and how to mend it', () => {
    expect(textOf(20, 31)).toEqual([
      `Stock ${first.id}: the plan needs 31, only 20 can be had; let its cut panels come from other stock too, lay other stock, or order more.`,
    ]);
    expect(textOf(0, 1)[0]).toContain('the plan needs 1, none can be had');
    expect(textOf(20, 19, 2)[0]).toContain('needs 19 and 2 spare, only 20 can be had; take fewer spares');
  });

  test('is no finding where there is enough, or no count', () => {
    expect(textOf(31, 31)).toEqual([]);
    expect(stockFindings(job, { order: [{ stock: first.id, plan: 999, spares: 9 }] })).toEqual([]);
  });

  test('stands among the findings of the job, whose plan still places every panel', () => {
    const plain = workOutFully(job, { steps: 1 });
    const short = workOutFully(withStock(1, 0), { steps: 1 });
    expect(short.findings.filter(({ code }) => code === 'stock-short')).toHaveLength(1);
    const placed = (worked: typeof plain) =>
      worked.cutting.sheets.flatMap(({ placements }) => placements).length;
    expect(placed(short)).toBe(placed(plain));
  });
});
