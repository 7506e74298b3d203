import type { Offer } from '../job/offer-schema';
import type { Job } from '../job/schema';

/*
 * What an offer has where its job says nothing. Money is 0, since any figure would be invented; the rest is common
 * practice, no source, and everyone changes it.
 */

/** Decimal comma and spaces between thousands, as on all other documents (ISO 129-1:2018). */
export const usualLocale = 'sv-SE';

export const usualOffer = {
  offeredBy: '',
  locale: usualLocale,
  labourRates: [],
  setUp: 0,
  travel: 0,
  parking: 0,
  access: [],
  wasteRemoval: 0,
  minimumCharge: 0,
  leftOver: 'client',
  siteCosts: 'own-lines',
  provisionalSums: [],
  finish: {},
  overhead: 0,
  markup: 0,
  discount: 0,
  taxes: [],
  lineTaxes: [],
  rounding: 'half-up',
  taxRounding: 'per-total',
  lines: 'zone',
  priceList: [],
  extras: [],
  deposit: 0,
  retention: 0,
  retentionUntil: '',
  stages: [],
  validityDays: 30,
  closingWords: '',
  care: {},
  budgetRange: { below: 10, above: 20 },
} as const satisfies Offer;

export type OfferTerms = { readonly [Term in keyof typeof usualOffer]: NonNullable<Offer[Term]> } & Pick<
  Offer,
  OptionalTerm
>;

/** What follows from the rest of the job or from `usual-words.ts` where it is absent. */
type OptionalTerm = 'visits' | 'protection' | 'tax' | 'exclusions' | 'duties';

/** The offer of a job with everything it leaves out as usual. */
export function termsOf({ offer }: Job): OfferTerms {
  const given = Object.fromEntries(Object.entries(offer ?? {}).filter(([, value]) => value !== undefined));
  return { ...usualOffer, ...given } as OfferTerms;
}
