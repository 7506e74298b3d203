import { describe, expect, it } from 'vitest';
import { readyProducts } from '../../core/build-up/ready-products';
import { demoJob } from '../../core/job/demo';
import type { Job } from '../../core/job/schema';
import { priceJob } from '../../core/offer/price-job';
import { workOutFully } from '../../core/run/pipeline';

const worked = workOutFully(demoJob(), { steps: 1 });
const priced = (change: (job: Job) => Job) => priceJob({ ...worked, job: change(worked.job) });
const demo = priced((job) => job);

describe('the price of the demo job', () => {
  it('is made of everything that is taken off and of all hours of the programme', () => {
    const { takeOff, programme, inputs, offer } = demo;
    const costs = (kind: string) =>
      offer.internal.costs.filter((one) => one.kind === kind).reduce((sum, { cost }) => sum + cost, 0);
    expect(takeOff.isWholeCost).toBe(true);
    expect(costs('material')).toBe(takeOff.cost);
    const crewMinutes = programme.tasks.reduce((sum, { work }) => sum + work, 0);
    const hours = inputs.labour.reduce((sum, one) => sum + one.hours, 0);
    expect(hours).toBeCloseTo((crewMinutes / 60) * programme.settings.crew, 6);
    // 46.00 an hour, rounded on every cost line.
    expect(Math.abs(costs('labour') - hours * 4600)).toBeLessThan(50);
    expect(offer.lines.reduce((sum, { amount }) => sum + amount, 0)).toBe(offer.net);
    expect(offer.findings.filter(({ level }) => level !== 'note')).toEqual([]);
  });

  it('follows the price of a product at once', () => {
    const dearer = priced((job) => ({
      ...job,
      products: job.products!.map((product) =>
        product.id === 'fine-filler'
          ? { ...product, packs: product.packs.map((pack) => ({ ...pack, price: pack.price + 10 })) }
          : product,
      ),
    }));
    expect(dearer.takeOff.cost).toBeGreaterThan(demo.takeOff.cost);
    expect(dearer.offer.gross).toBeGreaterThan(demo.offer.gross);
    expect(dearer.programme).toEqual(demo.programme);
  });

  it('has the days of the programme: nothing is written on or hung before it has cured', () => {
    const { ready, handover } = demo.inputs;
    expect(ready.map(({ wall, zone }) => `${wall}/${zone}`).sort()).toEqual(
      worked.walls.flatMap(({ survey, zones }) =>
        zones.map(({ area }) => `${survey.wall.id}/${area.zone.id}`),
      ),
    );
    expect(ready.find(({ wall, zone }) => wall === 'A' && zone === 'Z2')?.magnets).toBeNull();
    for (const { magnets, writing } of ready) {
      for (const day of [magnets, writing]) if (day !== null) expect(day > '2026-03-09').toBe(true);
    }
    expect(handover! > '2026-03-09').toBe(true);
  });

  it('counts days where the job names none', () => {
    const { inputs } = priced(({ programme: _, ...job }) => job as Job);
    expect(inputs.ready).toHaveLength(demo.inputs.ready.length);
    for (const { magnets, writing } of inputs.ready) {
      for (const day of [magnets, writing]) if (day !== null) expect(day).toMatch(/^day \d+$/);
    }
    expect(inputs.handover).toMatch(/^day \d+$/);
    expect(inputs.visits).toBeGreaterThan(0);
  });

  it('says what has no price', () => {
    const bare = priced(({ products: _, ...job }) => job as Job);
    expect(readyProducts.every(({ packs }) => packs.every(({ price }) => price === 0))).toBe(true);
    expect(bare.takeOff.isWholeCost).toBe(false);
    expect(bare.offer.findings.map(({ code }) => code)).toContain('offer-no-price');
  });
});
