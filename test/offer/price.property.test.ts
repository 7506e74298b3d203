import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readJobObject } from '../../core/job/read';
import type { Offer } from '../../core/job/offer-schema';
import { sumOf } from '../../core/offer/money';
import type { OfferInputs } from '../../core/offer/offer-inputs';
import { priceOffer } from '../../core/offer/price';
import { offeredJob } from './offered-job';
import { currencies, offerInputs, offers } from './random-offer';

function forAll(check: (offer: Partial<Offer>, of: OfferInputs, currency: string) => void): void {
  fc.assert(fc.property(offers, offerInputs, currencies, check), { numRuns: 200 });
}

const sumOfAmounts = (list: readonly { readonly amount: number }[]) =>
  sumOf(list.map(({ amount }) => amount));

describe('every price', () => {
  it('is whole, and lines, taxes and payments add up to it', () => {
    forAll((offer, of, currency) => {
      const { lines, net, taxes, gross, payments } = priceOffer(offeredJob(offer, currency), of);
      for (const { amount, unitPrice } of lines) {
        expect(Number.isInteger(amount)).toBe(true);
        expect(Number.isInteger(unitPrice)).toBe(true);
      }
      expect(sumOfAmounts(lines)).toBe(net);
      expect(net + sumOfAmounts(taxes)).toBe(gross);
      expect(sumOfAmounts(payments)).toBe(gross);
    });
  });

  it('is nothing or more, and so is every payment; it reaches the least charge', () => {
    forAll((offer, of) => {
      const { net, gross, payments, lines } = priceOffer(offeredJob(offer), of);
      expect(net).toBeGreaterThanOrEqual(0);
      expect(gross).toBeGreaterThanOrEqual(net);
      for (const { amount } of payments) expect(amount).toBeGreaterThan(0);
      const provisional = sumOfAmounts(lines.filter(({ kind }) => kind === 'provisional'));
      expect(net - provisional).toBeGreaterThanOrEqual(Math.round((offer.minimumCharge ?? 0) * 100));
    });
  });

  it('takes every line into one tax or another: their bases add up to the net price', () => {
    forAll((offer, of) => {
      const { net, taxes } = priceOffer(offeredJob(offer), of);
      expect(sumOf(taxes.map(({ base }) => base))).toBe(net);
    });
  });

  it('loses no cost on its way to the lines', () => {
    forAll((offer, of, currency) => {
      const { lines, internal } = priceOffer(offeredJob(offer, currency), of);
      expect(sumOf(lines.map(({ cost }) => cost))).toBe(internal.direct);
      for (const { cost, shares } of internal.costs) expect(sumOf([...shares.values()])).toBe(cost);
    });
  });

  it('rounded for each line and for each total differs by half a unit a line and a tax at most', () => {
    forAll((offer, of) => {
      const [total, line] = (['per-total', 'per-line'] as const).map((taxRounding) =>
        priceOffer(offeredJob({ ...offer, taxRounding }), of),
      );
      const halves = (total!.lines.length + total!.taxes.length) / 2;
      expect(Math.abs(total!.gross - line!.gross)).toBeLessThanOrEqual(halves);
    });
  });

  it('split by zone instead of by wall or job changes by what unit prices are rounded by, no more', () => {
    forAll((offer, of) => {
      const plain = { ...offer, discount: 0, minimumCharge: 0 };
      const priced = (['zone', 'wall', 'job'] as const).map((lines) =>
        priceOffer(offeredJob({ ...plain, lines }), of),
      );
      // Half a unit for what is sold, half for its unit price times the quantity, half for the amount.
      const allowed = priced.map(({ lines }) =>
        lines.filter(({ kind }) => kind === 'work').reduce((sum, { quantity }) => sum + 1 + quantity / 2, 0),
      );
      for (const i of [1, 2]) {
        expect(Math.abs(priced[i]!.net - priced[0]!.net)).toBeLessThanOrEqual(allowed[0]! + allowed[i]!);
      }
    });
  });

  it('rises with the markup and falls with the discount', () => {
    forAll((offer, of) => {
      const net = (patch: Partial<Offer>) => priceOffer(offeredJob({ ...offer, ...patch }), of).net;
      expect(net({ markup: (offer.markup ?? 0) + 50 })).toBeGreaterThanOrEqual(net({}));
      expect(net({ discount: 100 })).toBeLessThanOrEqual(net({}));
    });
  });

  it('comes from an offer that any file may hold', () => {
    fc.assert(
      fc.property(offers, (offer) => {
        const file = { format: 'lodeplan-job', version: 1, name: 'Studio', offer };
        expect(readJobObject(file).findings).toEqual([]);
      }),
    );
  });
});
