import { addQuickWall } from '../job/quick-wall';
import { newZone } from '../job/defaults';
import { extentOf } from '../job/extent';
import { minorUnitDigits } from '../job/minor-unit';
import type { Job } from '../job/schema';
import { formatFigure, formatMoney, type Minor } from './money';
import { wholeOf } from './decimal';
import type { OfferInputs } from './offer-inputs';
import { priceOffer, type PricedOffer } from './price';
import { termsOf } from './usual-prices';

/** What somebody knows of a wall on the telephone. */
export interface BudgetRequest {
  readonly name: string;
  /** mm, of the zone, which is the whole wall. */
  readonly width: number;
  readonly height: number;
  /** Id of a build-up kind: `steel-panel`. */
  readonly buildUp: string;
}

export interface BudgetPrice {
  /** With tax, rounded outward to whole units of the currency. */
  readonly low: Minor;
  readonly high: Minor;
  readonly priced: PricedOffer;
  /** What the price is of and how far it may be off. */
  readonly words: string;
}

/** The job with one wall alone that nobody has measured, one zone over all of it. */
export function budgetJob(job: Job, { name, width, height, buildUp }: BudgetRequest): Job {
  const { alternatives: _a, chosenAlternative: _c, revisions: _r, photos: _p, ...rest } = job;
  const bare = { ...rest, walls: [], revisions: [] } as unknown as Job;
  const walled = addQuickWall(bare, { name, width, height, openings: [], zone: false, surveyed: false });
  const wall = walled.walls[0]!;
  const zone = newZone(walled, wall, { x: 0, y: 0, width, height }, buildUp);
  return { ...walled, walls: [{ ...wall, zones: [zone] }] };
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
  const priced = priceOffer(budget, inputsOf(budget));
  const { budgetRange, locale } = termsOf(job);
  const { below, above } = budgetRange;
  const low = outward(priced.gross, 100 - below, job.currency, 'down');
  const high = outward(priced.gross, 100 + above, job.currency, 'up');
  const size = extentOf(budget.walls[0]!.zones[0]!);
  const money = (amount: Minor) => formatMoney(amount, job.currency, locale);
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

/** A percentage of an amount to whole units of the currency, away from the amount. */
function outward(amount: Minor, percent: number, currency: string, way: 'down' | 'up'): Minor {
  const unit = 10 ** minorUnitDigits(currency);
  // A hundred thousand times as fine as the unit, so that nothing that matters is rounded before the last step.
  const exact = wholeOf([amount, percent, 1e5], [100 * unit], 'half-up') / 1e5;
  return (way === 'down' ? Math.floor(exact) : Math.ceil(exact)) * unit;
}
