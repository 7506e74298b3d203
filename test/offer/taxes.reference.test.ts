import { describe, expect, it } from 'vitest';
import { percentOf } from '../../core/offer/money';
import { priceOffer } from '../../core/offer/price';
import { inputs, offeredJob } from './offered-job';

/*
 * HMRC VATREC12010 on Notice 700, paragraph 17.5, as read (check-values M9): VAT may be reckoned for each line or for the
 * total, to the nearest penny, and the two may differ by pence, so the way is to be stated. 86.76p to the nearest penny is
 * 87p (read in a trade forum that quotes the paragraph).
 */
describe('VAT to the nearest penny, HMRC Notice 700 paragraph 17.5', () => {
  it('86.76p is 87p', () => {
    expect(percentOf(2_169, 4, 'half-up')).toBe(87);
  });

  it('for each line and for the total differs by a penny on three lines of 0.33 at 20 %', () => {
    const none = { ...inputs, labour: [], materials: [], zones: [] };
    const offer = {
      priceList: [{ id: 'E', name: 'Pin', unit: 'piece', price: 0.33 }],
      extras: ['1', '2', '3'].map((id) => ({ id, item: 'E', quantity: 1 })),
      taxes: [{ id: 'V', name: 'VAT', percent: 20 }],
    };
    // 0.066 each is 0.07, three of them 0.21; 0.99 in all is 0.198, which is 0.20.
    const [line, total] = (['per-line', 'per-total'] as const).map((taxRounding) =>
      priceOffer(offeredJob({ ...offer, taxRounding }, 'GBP'), none),
    );
    expect(line!.taxes[0]!.amount).toBe(21);
    expect(total!.taxes[0]!.amount).toBe(20);
    expect(line!.rounding).toContain('tax is rounded for each line');
    expect(total!.rounding).toContain('tax is rounded once for each rate');
  });
});
