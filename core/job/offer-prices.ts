import { roundToMinorUnit } from './minor-unit';
import { finishLevels, type Offer } from './offer-schema';
import type { Job } from './schema';

/** The job with every price of its offer rounded to the currency's minor unit, as stock prices are on reading. */
export function withRoundedOffer(job: Job): Job {
  return job.offer ? { ...job, offer: rounded(job.offer, job.currency) } : job;
}

function rounded(offer: Offer, currency: string): Offer {
  const round = (amount: number) => roundToMinorUnit(amount, currency);
  const single = ['setUp', 'travel', 'parking', 'wasteRemoval', 'minimumCharge'] as const;
  const prices = single.flatMap((key) => (offer[key] === undefined ? [] : [[key, round(offer[key])]]));
  const { labourRates, access, protection, provisionalSums, priceList, finish } = offer;
  return {
    ...offer,
    ...Object.fromEntries(prices),
    ...(labourRates && { labourRates: labourRates.map((one) => ({ ...one, rate: round(one.rate) })) }),
    ...(access && { access: access.map((one) => ({ ...one, price: round(one.price) })) }),
    ...(protection && { protection: { ...protection, rate: round(protection.rate) } }),
    ...(provisionalSums && {
      provisionalSums: provisionalSums.map((one) => ({ ...one, amount: round(one.amount) })),
    }),
    ...(finish?.prices && { finish: { ...finish, prices: roundedFinish(finish.prices, round) } }),
    ...(priceList && { priceList: priceList.map((one) => ({ ...one, price: round(one.price) })) }),
  };
}

type FinishPrices = NonNullable<NonNullable<Offer['finish']>['prices']>;

function roundedFinish(prices: FinishPrices, round: (amount: number) => number): FinishPrices {
  const given = finishLevels.flatMap((level) => {
    const price = prices[level];
    return price === undefined ? [] : [[level, round(price)] as const];
  });
  return { ...prices, ...Object.fromEntries(given) };
}
