import { describe, expect, it } from 'vitest';
import { checkJob } from '../../core/job/check';
import { budgetJob, budgetPrice } from '../../core/offer/budget';
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
    expect(words).toBe(
      'Budget price, subject to survey: between €505.00 and €744.00 with tax for 4000 × 2500 mm. ' +
        'It is reckoned at €595.00 and may be 15 % less or 25 % more; the wall has not been measured.',
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
