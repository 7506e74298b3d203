import { describe, expect, it } from 'vitest';
import { alternativesOf, jobOfAlternative } from '../../core/job/alternatives';
import { checkJob } from '../../core/job/check';
import { budgetPrice, assumptionsOf, compareBudgets } from '../../core/offer/budget';
import { budgetJob, budgetJobOf } from '../../core/offer/budget-job';
import type { OfferInputs } from '../../core/offer/offer-inputs';
import type { Job } from '../../core/job/schema';
import { priceOffer } from '../../core/offer/price';
import { reservationsInWords } from '../../core/offer/scope-words';
import { offeredJob } from './offered-job';

const request = { name: 'Back wall', width: 4000, height: 2500, buildUp: 'magnetic-coating' };

/** An hour a square metre, and nothing else. */
function plainInputs(job: Job): OfferInputs {
  const [wall] = job.walls;
  const of = { wall: wall!.id, zone: wall!.zones[0]!.id };
  return {
    zones: [{ ...of, trueArea: 10e10, offerArea: 10e10 }],
    materials: [],
    labour: [{ kind: 'coat', hours: 10, of }],
    visits: 1,
    workingDays: 2,
    measuredBy: '',
    ready: [],
    handover: null,
  };
}

describe('a budget price', () => {
  const job = offeredJob({
    labourRates: [{ rate: 50 }],
    taxes: [{ id: 'V', name: 'VAT', percent: 19 }],
    budgetRange: { below: 15, above: 25 },
  });

  it('comes from the same reckoning as every price, with its range rounded outward', () => {
    const budget = budgetPrice(job, request, plainInputs);
    const made = budgetJob(job, request);
    expect(budget.priced).toEqual(priceOffer(made, plainInputs(made)));
    // 10 h × 50.00 + 19 % = 595.00; × 0.85 = 505.75, × 1.25 = 743.75.
    expect(budget.priced.gross).toBe(59_500);
    expect([budget.low, budget.high]).toEqual([50_500, 74_400]);
  });

  it('says that it is subject to survey, what it is of and how far it may be off', () => {
    const { words } = budgetPrice(job, request, plainInputs);
    expect(words.replaceAll('\u00A0', ' ')).toBe(
      'Budget price, subject to survey: between EUR 505.00 and EUR 744.00 with tax for 4000 × 2500 mm. ' +
        'It is reckoned at EUR 595.00 and may be 15 % less or 25 % more; the wall has not been measured.',
    );
  });

  it('counts yen and fils as they are', () => {
    const at = (currency: string) =>
      budgetPrice(
        offeredJob({ labourRates: [{ rate: 50 }], budgetRange: { below: 1, above: 1 } }, currency),
        request,
        plainInputs,
      );
    expect([at('JPY').low, at('JPY').high]).toEqual([495, 505]);
    expect([at('KWD').low, at('KWD').high]).toEqual([495_000, 505_000]);
  });

  it.each(['steel-panel', 'magnetic-film', 'writable', 'chalk'])(
    'of %s is of a sound job that nobody measured',
    (buildUp) => {
      const made = budgetJob(job, { ...request, buildUp });
      expect(checkJob(made)).toEqual([]);
      expect(made.walls).toHaveLength(1);
      expect(made.walls[0]!.zones).toMatchObject([{ buildUp }]);
      expect(made.walls[0]!.zones[0]!.layout !== undefined).toBe(buildUp.startsWith('steel'));
      expect(reservationsInWords(made)[0]).toContain('has not been measured on site');
    },
  );
});

describe('a budget of several ways', () => {
  const terms = {
    labourRates: [{ rate: 50 }],
    taxes: [{ id: 'V', name: 'VAT', percent: 20 }],
    visits: 9,
    discount: 50,
    access: [{ name: 'Tower', price: 90, per: 'day' as const, days: 7 }],
    provisionalSums: [{ id: 'P1', words: 'levelling', amount: 400 }],
    priceList: [{ id: 'L1', name: 'Shelf', unit: 'piece', price: 30 }],
    extras: [{ id: 'E1', item: 'L1', quantity: 2 }],
  };
  const job = offeredJob(terms);
  const several = budgetJobOf(job, request, ['steel-panel', 'magnetic-coating', 'magnetic-film']);

  it('is one sound job with every way as an alternative, the first of them chosen', () => {
    expect(checkJob(several)).toEqual([]);
    expect(alternativesOf(several)).toMatchObject([
      { title: 'Steel panels', isChosen: true },
      { title: 'Magnetic coating', isChosen: false },
      { title: 'Magnetic film', isChosen: false },
    ]);
    const zones = alternativesOf(several).map(({ id }) => jobOfAlternative(several, id).walls[0]!.zones[0]!);
    expect(zones.map(({ buildUp }) => buildUp)).toEqual(['steel-panel', 'magnetic-coating', 'magnetic-film']);
    expect(zones.map(({ layout }) => layout !== undefined)).toEqual([true, false, false]);
    const back = budgetJobOf(job, request, ['magnetic-film', 'steel-panel']);
    expect(checkJob(back)).toEqual([]);
    expect(jobOfAlternative(back, 'V2').walls[0]!.zones[0]!.layout).toBeDefined();
  });

  it('takes rates and prices of the other job along, and nothing that was agreed for it alone', () => {
    const before = JSON.stringify(job);
    const { offer, client, reference, rack } = budgetJob(job, request);
    expect(JSON.stringify(job)).toBe(before);
    expect(budgetJob(job, { ...request, name: '', client: 'Hand press club' }).name).toBe(
      'Wall for Hand press club',
    );
    expect([client, reference, rack]).toEqual(['', '', []]);
    expect(offer).toMatchObject({ labourRates: terms.labourRates, taxes: terms.taxes });
    for (const agreed of ['visits', 'discount', 'provisionalSums', 'extras', 'access'])
      expect(offer).not.toHaveProperty(agreed);
    const high = budgetJob(job, { ...request, access: true });
    expect(high.offer?.access).toEqual([{ name: 'Tower', price: 90, per: 'day' }]);
  });

  it('stands side by side with ranges first and what was assumed in words', () => {
    const jobs = alternativesOf(several).map(({ id }) => jobOfAlternative(several, id));
    const budgets = jobs.map((one, i) => {
      const inputs = { ...plainInputs(one), visits: i + 1 };
      return { job: one, inputs, offer: priceOffer(one, inputs) };
    });
    const { titles, rows } = compareBudgets(budgets);
    expect(titles).toEqual(['Steel panels', 'Magnetic coating', 'Magnetic film']);
    // 10 h × 50.00 + 20 % = 600.00; − 10 % and + 20 %.
    expect(rows[0]).toMatchObject({ label: 'Budget price with tax' });
    expect(rows[0]!.values[0]!.replaceAll('\u00A0', ' ')).toBe('EUR 540.00 to EUR 720.00');
    expect(rows.find(({ label }) => label === 'Visits')!.values).toEqual(['1', '2', '3']);

    expect(assumptionsOf(several).join(' ')).toContain('4000 × 2500 mm and all of it one zone');
    expect(assumptionsOf(several).join(' ')).toContain('What the wall is made of is not known');
    const told = budgetJob(job, {
      ...request,
      ground: { material: 'gypsum-board', exposure: 'damp' },
      start: '2026-12-07',
    });
    expect(assumptionsOf(told).join(' ')).toMatch(/gypsum board.*It is damp.*begins on 7 December 2026/);
  });
});
