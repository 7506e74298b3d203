import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Product } from '../../core/job/product-schema';
import { mixingPlans, potLifeAt } from '../../core/quantities/mixing-plan';
import { box, jobOf, wallOf, workedTakeOff } from './worked-jobs';

/** 10 m² an hour for an hour: 10 m² a mix; 4 : 1 by volume, 10 m² a litre. */
const product = {
  id: 'w',
  name: 'Writable finish',
  layer: 'writable',
  unit: 'l',
  coats: 2,
  pace: 10,
  spreadingRate: 10,
  loss: 0.2,
  packs: [{ size: 2, price: 0 }],
  mixing: { parts: [4, 1], by: 'volume', potLife: 60, potLifeAt: 20, openTime: 40 },
} as unknown as Product;
const conditions = { temperature: 20, hands: 1, potLifeHalves: 10 };
const sections = (...areas: number[]) => areas.map((area, i) => ({ name: `section ${i + 1}`, area }));
const mixesOf = (areas: number[], over = conditions) =>
  mixingPlans(product, sections(...areas), 1, 0.1, over)![0]!;
const shape = (areas: number[], over = conditions) =>
  mixesOf(areas, over).mixes.map(({ parts }) => parts.map(({ area }) => area));

describe('pot life', () => {
  it('halves with every 10 K (common practice, no source) and as the job says otherwise', () => {
    expect(potLifeAt(60, 20, 30, 10)).toBe(30);
    expect(potLifeAt(60, 20, 10, 10)).toBe(120);
    expect(potLifeAt(60, 23, 30, 7)).toBe(30);
  });
});

describe('a mixing plan', () => {
  it('ends mixes at edges of sections as long as they fit', () => {
    expect(shape([6, 4, 5])).toEqual([[6, 4], [5]]);
    expect(shape([6, 5, 5])).toEqual([[6], [5, 5]]);
    expect(mixesOf([6, 5, 5]).lapsInFace).toBe(0);
  });

  it('laps within a face only where a section is more than a mix, and says so', () => {
    const plan = mixesOf([25]);
    expect(plan.mixes.map(({ area }) => area)).toEqual([10, 10, 5]);
    expect(plan.lapsInFace).toBe(2);
    expect(plan.mixes.map(({ parts }) => parts[0]!.endsInFace)).toEqual([true, true, false]);
  });

  it('uses the rest of a mix for the next section where that costs no further lap', () => {
    expect(shape([5, 15])).toEqual([[5, 5], [10]]);
    expect(shape([8, 19])).toEqual([[8], [10], [9]]);
  });

  it('lays more with more hands, less when it is warmer', () => {
    expect(shape([20], { ...conditions, hands: 2 })).toEqual([[20]]);
    expect(shape([20], { ...conditions, temperature: 30 })).toEqual([[5], [5], [5], [5]]);
  });

  it('says how much of each component: 10 m² at 10 m² a litre, 20 % lost, 4 : 1', () => {
    const [mix] = mixesOf([10]).mixes;
    expect(mix!.amount).toBeCloseTo(1.25, 9);
    expect(mix!.components![0]).toBeCloseTo(1, 9);
    expect(mix!.components![1]).toBeCloseTo(0.25, 9);
    expect(mix!.kits).toBeCloseTo(0.625, 9);
    expect(mix!.minutes).toBeCloseTo(60, 9);
  });

  it('weighs out what is sold by volume by its density, and does not where that is unknown', () => {
    const byWeight = { ...product, mixing: { ...product.mixing!, by: 'weight' as const } };
    const mix = (of: Product) => mixingPlans(of, sections(10), 1, 0.1, conditions)![0]!.mixes[0]!;
    expect(mix({ ...byWeight, density: 1.2 }).components![0]).toBeCloseTo(1.2, 9);
    expect(mix(byWeight).components).toBeNull();
  });

  it('takes the tape off after the last coat while it is open', () => {
    const plans = mixingPlans(product, sections(4), 2, 0.1, conditions)!;
    expect(plans.map(({ mixes }) => mixes[0]!.maskingOff)).toEqual([null, 40]);
  });

  it('is none for what is not mixed, or of unknown pace', () => {
    expect(mixingPlans({ ...product, mixing: undefined }, sections(4), 1, 0.1, conditions)).toBeNull();
    expect(mixingPlans({ ...product, pace: undefined }, sections(4), 1, 0.1, conditions)).toBeNull();
  });
});

/** Laps in a face and mixes of the best division, every division into whole areas tried. */
function byTryingAll(areas: readonly number[], most: number): [number, number] {
  let best: [number, number] = [Infinity, Infinity];
  const goOn = (i: number, left: number, room: number, laps: number, mixes: number) => {
    if (laps > best[0] || (laps === best[0] && mixes >= best[1])) return;
    if (left === 0) {
      if (i + 1 === areas.length) best = [laps, mixes];
      else goOn(i + 1, areas[i + 1]!, room, laps, mixes);
      return;
    }
    for (let laid = 1; laid <= Math.min(left, room); laid++) {
      // What is left of a section is laid from another mix: a lap.
      if (laid < left) goOn(i, left - laid, most, laps + 1, mixes + 1);
      else goOn(i, 0, room - laid, laps, mixes);
    }
    if (room < most && left === areas[i]) goOn(i, left, most, laps, mixes + 1);
  };
  goOn(0, areas[0]!, most, 0, 1);
  return best;
}

describe('mixes, against every division', () => {
  it('have fewest laps in a face, then are fewest, and none is more than can be laid', () => {
    const areas = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(areas, fc.integer({ min: 2, max: 6 }), (own, most) => {
        const plan = mixingPlans({ ...product, pace: most }, sections(...own), 1, 0.1, conditions)![0]!;
        expect([plan.lapsInFace, plan.mixes.length]).toEqual(byTryingAll(own, most));
        for (const { area, minutes } of plan.mixes) {
          expect(area).toBeLessThanOrEqual(plan.mostArea + 1e-9);
          expect(minutes).toBeLessThanOrEqual(plan.potLife + 1e-6);
        }
        const laid = plan.mixes.flatMap(({ parts }) => parts);
        own.forEach((area, i) => {
          const sum = laid
            .filter(({ section }) => section === `section ${i + 1}`)
            .reduce((all, part) => all + part.area, 0);
          expect(sum).toBeCloseTo(area, 9);
        });
      }),
      { numRuns: 300 },
    );
  });
});

describe('the mixing of a job', () => {
  it('goes zone by zone, adhesive panel by panel, and holds what the take-off does', () => {
    const job = jobOf({
      stock: [{ id: 'S1', width: 500, height: 500, thickness: 0.5 }],
      walls: [
        wallOf({
          zones: [
            {
              id: 'Z1',
              buildUp: 'steel-panel-writable',
              shape: box(1000, 1000, 2000, 1000),
              layout: { stock: 'S1', start: 'lower-left' },
            },
            { id: 'Z2', buildUp: 'writable', shape: box(3500, 1000, 2000, 1000) },
          ],
        }),
      ],
    });
    const { off } = workedTakeOff(job);
    const { mixing: plans, findings } = off;
    expect(findings).toEqual([]);
    const adhesive = plans.find(({ product: id }) => id === 'adhesive-two-component')!;
    expect(adhesive.mixes.flatMap(({ parts }) => parts).map(({ section }) => section)).toHaveLength(8);
    const amount = plans
      .filter(({ product: id }) => id === 'writable-finish')
      .flatMap(({ mixes }) => mixes)
      .reduce((sum, mix) => sum + mix.amount, 0);
    const line = off.lines.find(({ item }) => item === 'product writable-finish')!;
    expect(amount).toBeCloseTo(line.withLoss, 9);
  });

  it('says where a lap cannot be helped', () => {
    const job = jobOf({
      quantities: { temperature: 30 },
      walls: [wallOf({ zones: [{ id: 'Z1', buildUp: 'writable', shape: box(0, 0, 6000, 3000) }] })],
    });
    const { findings } = workedTakeOff(job).off;
    expect(findings[0]!.text).toMatch(/sets in 30 minutes at 30 °C, in which 1 person lays 5 m².*zone Z1/);
  });
});
