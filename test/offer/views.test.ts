import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sumOf } from '../../core/offer/money';
import { priceOffer } from '../../core/offer/price';
import { clientPrices, internalRows } from '../../core/offer/views';
import { inputs, offeredJob } from './offered-job';
import { offerInputs, offers } from './random-offer';

const offer = {
  labourRates: [{ rate: 51.37 }],
  overhead: 7.7,
  markup: 13.3,
  discount: 3,
  travel: 19.19,
  taxes: [{ id: 'V', name: 'VAT', percent: 20 }],
  wasteRemoval: 44.44,
};

describe('the view for the client', () => {
  it('has the same lines and sums as the price', () => {
    const priced = priceOffer(offeredJob(offer), inputs);
    const view = clientPrices(priced);
    expect(view.lines.map(({ amount }) => amount)).toEqual(priced.lines.map(({ amount }) => amount));
    expect(view).toMatchObject({ net: priced.net, gross: priced.gross, payments: priced.payments });
    expect(view.lines.map(({ tax, kind }) => (kind === 'discount' ? 'discount' : tax))).toEqual([
      ...[1, 1, 1, 1, 1],
      'discount',
    ]);
  });

  it('holds no cost, no rate and no surcharge, whatever the job', () => {
    const text = JSON.stringify(clientPrices(priceOffer(offeredJob(offer), inputs)));
    for (const secret of [
      'cost',
      'overhead',
      'markup',
      'result',
      '51.37',
      '5137',
      '13.3',
      '7.7',
      '19.19',
      '1919',
    ])
      expect(text).not.toContain(secret);
    const priced = priceOffer(offeredJob(offer), inputs);
    for (const { cost } of priced.internal.costs) expect(text).not.toMatch(new RegExp(`\\b${cost}\\b`));
  });
});

describe('the view for the firm', () => {
  it('leads from costs to the net price row by row', () => {
    fc.assert(
      fc.property(offers, offerInputs, (random, of) => {
        const priced = priceOffer(offeredJob(random), of);
        const rows = internalRows(priced);
        const at = rows.findIndex(({ name }) => name === 'Costs');
        const end = rows.findIndex(({ name }) => name === 'Net price');
        expect(sumOf(rows.slice(0, at).map(({ amount }) => amount))).toBe(rows[at]!.amount);
        expect(sumOf(rows.slice(at, end).map(({ amount }) => amount))).toBe(priced.net);
        expect(rows[end]!.amount).toBe(priced.net);
      }),
      { numRuns: 100 },
    );
  });
});
