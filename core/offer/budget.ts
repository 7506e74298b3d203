import { buildUpKind } from '../job/build-up-kinds';
import { dayInWords } from '../job/day-in-words';
import { extentOf } from '../job/extent';
import { minorUnitDigits } from '../job/minor-unit';
import type { Job } from '../job/schema';
import { compareAlternatives, type ComparedAlternatives } from './alternatives';
import { budgetJob, type BudgetRequest } from './budget-job';
import { wholeOf } from './decimal';
import { formatFigure, formatMoney, type Minor } from './money';
import type { OfferInputs } from './offer-inputs';
import { priceOffer, type PricedOffer } from './price';
import { termsOf } from './usual-prices';
import { clientPrices } from './views';

export interface BudgetPrice {
  /** With tax, rounded outward to whole units of the currency. */
  readonly low: Minor;
  readonly high: Minor;
  readonly priced: PricedOffer;
  /** What the price is of and how far it may be off. */
  readonly words: string;
}

/** One way to build up the wall, worked out and priced. */
export interface PricedBudget {
  readonly job: Job;
  readonly offer: PricedOffer;
  readonly inputs: Pick<OfferInputs, 'workingDays' | 'ready' | 'handover'>;
}

/**
 * A price from width and height alone, by the same way as every other price: subject to survey, with the range that the
 * job states.
 *
 * @param inputsOf what the job is priced from, worked out by the stages before
 */
export function budgetPrice(
  job: Job,
  request: BudgetRequest,
  inputsOf: (job: Job) => OfferInputs,
): BudgetPrice {
  const budget = budgetJob(job, request);
  return budgetOf(budget, priceOffer(budget, inputsOf(budget)));
}

/** @param job of one wall with one zone, as `budgetJob` makes it */
export function budgetOf(job: Job, priced: PricedOffer): BudgetPrice {
  const { budgetRange, locale } = termsOf(job);
  const { below, above } = budgetRange;
  const low = outward(priced.gross, 100 - below, job.currency, 'down');
  const high = outward(priced.gross, 100 + above, job.currency, 'up');
  const size = extentOf(job.walls[0]!.zones[0]!);
  const money = (amount: Minor) => formatMoney(amount, job.currency, locale, 'code');
  const percent = (value: number) => `${formatFigure(value, locale, 0, 2)} %`;
  const tax = priced.taxes.length > 0 ? 'with tax' : 'before tax';
  return {
    low,
    high,
    priced,
    words:
      `Budget price, subject to survey: between ${money(low)} and ${money(high)} ${tax} for ${size.width} × ${size.height} mm. ` +
      `It is reckoned at ${money(priced.gross)} and may be ${percent(below)} less or ${percent(above)} more; the wall has not been measured.`,
  };
}

/** Several ways side by side: range, reckoned price, visits, days, dates, what each holds and what it does not. */
export function compareBudgets(budgets: readonly PricedBudget[]): ComparedAlternatives {
  const compared = compareAlternatives(
    budgets.map(({ job, offer, inputs }) => {
      const buildUps = job.walls.flatMap(({ zones }) => zones.map(({ buildUp }) => buildUp));
      const title = buildUps.map((id) => buildUpKind(id).label).join(', ');
      return { title, buildUps, prices: clientPrices(offer), inputs };
    }),
  );
  const ranges = budgets.map(({ job, offer }) => {
    const { low, high } = budgetOf(job, offer);
    const money = (amount: Minor) => formatMoney(amount, job.currency, offer.locale, 'code');
    return `${money(low)} to ${money(high)}`;
  });
  const isTaxed = budgets.some(({ offer }) => offer.taxes.length > 0);
  const range = {
    label: `Budget price ${isTaxed ? 'with tax' : 'before tax'}`,
    values: ranges,
    differs: new Set(ranges).size > 1,
  };
  // How much of it is tax is for the offer to say.
  const [reckoned, ...rows] = compared.rows.filter(({ label }) => label !== 'Tax in it');
  return { ...compared, rows: [range, { ...reckoned!, label: 'Reckoned at' }, ...rows] };
}

/** How far the price may be off, in a sentence without amounts: it holds for every way to build up the wall. */
export function rangeInWords(job: Job): string {
  const { budgetRange, locale } = termsOf(job);
  const percent = (value: number) => `${formatFigure(value, locale, 0, 2)} %`;
  return `The price may turn out ${percent(budgetRange.below)} less or ${percent(budgetRange.above)} more than it is reckoned at.`;
}

/** What a budget price takes for granted, as sentences; lengths in mm. */
export function assumptionsOf(job: Job): string[] {
  const wall = job.walls[0]!;
  const { width, height } = extentOf(wall.zones[0]!);
  const { material, exposure } = wall.ground ?? {};
  const { access } = termsOf(job);
  return [
    `The wall is a rectangle of ${width} × ${height} mm and all of it one zone; nothing is taken off for doors, windows, sockets or pipes. Nobody has measured it.`,
    material
      ? `The wall is of ${material.replaceAll('-', ' ')}, as it was told; that it is sound and flat has not been looked at.`
      : 'What the wall is made of is not known; it is taken to be sound and flat.',
    exposure === undefined
      ? 'It is taken to be dry; damp in the wall changes the work and the price.'
      : exposure === 'dry'
        ? 'It is dry, as it was told.'
        : `It is ${exposure === 'heated-behind' ? 'heated from behind' : exposure}, as it was told: whether anything may be fixed to it is decided when it has been looked at.`,
    access.length > 0
      ? `In the price: ${access.map(({ name }) => name).join(', ')}.`
      : 'Everything is reached from the floor or from steps; no other access equipment is in the price.',
    job.programme?.start
      ? `Dates hold if the work begins on ${dayInWords(job.programme.start)}.`
      : 'Days are counted from the first day of the work.',
  ];
}

const missing: Readonly<Record<string, string>> = {
  'offer-no-price': 'materials that have no price yet',
  'offer-no-rate': 'hours of work that have no rate yet',
};

/** What the prices leave out because nobody has said what it costs, as sentences: such ways are dearer than they look. */
export function leftOutOf(budgets: readonly PricedBudget[]): string[] {
  const { titles } = compareBudgets(budgets);
  return Object.entries(missing).flatMap(([code, words]) => {
    const ways = titles.filter((_, i) => budgets[i]!.offer.findings.some((finding) => finding.code === code));
    return ways.length === 0 ? [] : [`Not in the price of ${ways.join('; ').toLowerCase()}: ${words}.`];
  });
}

/** A percentage of an amount to whole units of the currency, away from the amount. */
function outward(amount: Minor, percent: number, currency: string, way: 'down' | 'up'): Minor {
  const unit = 10 ** minorUnitDigits(currency);
  // A hundred thousand times as fine as the unit, so that nothing that matters is rounded before the last step.
  const exact = wholeOf([amount, percent, 1e5], [100 * unit], 'half-up') / 1e5;
  return (way === 'down' ? Math.floor(exact) : Math.ceil(exact)) * unit;
}
