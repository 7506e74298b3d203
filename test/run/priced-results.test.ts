import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readJob } from '../../core/job/read';
import { priceJob } from '../../core/offer/price-job';
import { workOutFully } from '../../core/run/pipeline';
import { pricedResults } from '../../core/run/priced-results';
import { toResults } from '../../core/run/results';

const demo = readJob(readFileSync('core/job/demo-job.json', 'utf8')).job!;
const worked = workOutFully(demo, { steps: 3 });
const priced = priceJob(worked);
const results = pricedResults(worked, priced);
/** Whole hundredths, so that sums hold exactly. */
const minor = (amount: number) => Math.round(amount * 100);
const sum = (of: readonly number[]) => of.reduce((all, one) => all + one, 0);

describe('the results of layers, amounts, dates and price', () => {
  it('stand beside those that the file had, under names of their own', () => {
    const before = Object.keys(toResults(worked));
    expect(Object.keys(results).filter((name) => before.includes(name))).toEqual([]);
    expect(JSON.parse(JSON.stringify(results))).toEqual(results);
  });

  it('are of every zone', () => {
    const zones = demo.walls.flatMap((wall) => wall.zones.map(({ id }) => `${wall.id} ${id}`));
    expect(zones.length).toBeGreaterThan(2);
    expect(results.buildUps.map(({ wall, zone }) => `${wall} ${zone}`)).toEqual(zones);
    expect(results.quantities.zones.map(({ wall, zone }) => `${wall} ${zone}`)).toEqual(zones);
    for (const { layers } of results.buildUps) expect(layers.length).toBeGreaterThan(0);
  });

  it('measure true areas in mm², no zone larger than it is drawn', () => {
    for (const { wall, zone, trueArea } of results.quantities.zones) {
      const drawn = demo.walls.find(({ id }) => id === wall)!.zones.find(({ id }) => id === zone)!;
      const points = drawn.shape.map((vertex) => ('arcTo' in vertex ? vertex.arcTo : vertex));
      const width = Math.max(...points.map(([x]) => x)) - Math.min(...points.map(([x]) => x));
      const height = Math.max(...points.map(([, y]) => y)) - Math.min(...points.map(([, y]) => y));
      expect(trueArea).toBeGreaterThan(10_000);
      // Reveals of openings may come on top.
      expect(trueArea).toBeLessThan(1.3 * width * height);
    }
  });

  it('order what is needed: packs add up and hold what is lost too', () => {
    const { materials, materialCost } = results.quantities;
    expect(materials.length).toBeGreaterThan(5);
    for (const { packs, ordered, withLoss, net } of materials) {
      expect(withLoss).toBeGreaterThanOrEqual(net);
      if (!packs) continue;
      expect(sum(packs.map(({ size, count }) => size * count))).toBeCloseTo(ordered!, 9);
      expect(ordered!).toBeGreaterThanOrEqual(withLoss - 1e-9);
    }
    expect(minor(materialCost)).toBe(sum(materials.map(({ cost }) => minor(cost ?? 0))));
  });

  it('add up to the price: lines, taxes, payments', () => {
    const { lines, taxes, payments, netPrice, price } = results.offer;
    expect(netPrice).toBeGreaterThan(0);
    expect(minor(netPrice)).toBe(sum(lines.map(({ amount }) => minor(amount))));
    expect(minor(price)).toBe(minor(netPrice) + sum(taxes.map(({ amount }) => minor(amount))));
    expect(minor(price)).toBe(sum(payments.map(({ amount }) => minor(amount))));
  });

  it('date every task, none after handover', () => {
    const { tasks, handover, begins } = results.programme;
    expect(tasks.length).toBeGreaterThan(10);
    expect(begins).not.toBeNull();
    // Of one form, so that they sort as text where the job has a date.
    const isDated = /^\d{4}-\d{2}-\d{2} \d{2}:\d{2}$/;
    if (isDated.test(handover!)) {
      for (const { ends } of tasks) expect(ends! <= handover!).toBe(true);
    }
    expect(tasks.at(-1)!.ends).toBe(handover);
  });
});
