import type { Job } from '../job/schema';
import { squareMetres } from './areas';
import { formatAmount, formatFigure, shareOut, times, toMinor, type Minor } from './money';
import { keyOf, type OfferInputs, type OfferMaterial, type ZoneRef } from './offer-inputs';
import { termsOf, type OfferTerms } from './usual-prices';

/** What the job costs whoever does it: never shown to a client. */
export interface CostLine {
  readonly kind: 'labour' | 'material' | 'site';
  /** Of a site cost: the line of the offer that it goes into, such as `visits`. */
  readonly id: string;
  readonly name: string;
  /** How the figure comes about: `12.5 h × 48.00`. */
  readonly basis: string;
  readonly cost: Minor;
  /** What of it each zone bears, by `keyOf`; the parts add up to the cost. Empty where there is no zone. */
  readonly shares: ReadonlyMap<string, Minor>;
  /** Of a site cost: how much of what is counted. */
  readonly quantity: number;
  readonly unit: string;
}

/** Costs of a job in the order labour, materials, site. */
export function costsOf(job: Job, inputs: OfferInputs): CostLine[] {
  const terms = termsOf(job);
  return [
    ...labourCosts(job, inputs, terms),
    ...materialCosts(job, inputs, terms),
    ...siteCosts(job, inputs, terms),
  ];
}

/** The rate of a kind of work: its own, else that of every other kind, else 0; minor units for an hour. */
export function rateOf(job: Job, kind: string): Minor {
  const { labourRates } = termsOf(job);
  const rate =
    labourRates.find((one) => one.kind === kind) ??
    labourRates.find((one) => one.kind === undefined || one.kind === '');
  return toMinor(rate?.rate ?? 0, job.currency);
}

/** Who has done how much of it: hours of a kind over all zones in one line, rounded once. */
function labourCosts(job: Job, inputs: OfferInputs, { rounding, locale }: OfferTerms): CostLine[] {
  const kinds = [...new Set(inputs.labour.map(({ kind }) => kind))];
  return kinds.map((kind) => {
    const tasks = inputs.labour.filter((task) => task.kind === kind);
    const hours = tidyHours(tasks.reduce((sum, task) => sum + task.hours, 0));
    const rate = rateOf(job, kind);
    const cost = times(rate, hours, rounding);
    return {
      kind: 'labour',
      id: `labour ${kind}`,
      name: kind.replaceAll('-', ' '),
      basis: `${formatFigure(hours, locale, 0, 2)} h × ${formatAmount(rate, job.currency, locale)}`,
      cost,
      shares: sharesOf(
        cost,
        inputs,
        (of) => tasks.reduce((sum, task) => sum + (task.of && keyOf(task.of) === of ? task.hours : 0), 0),
        tasks.reduce((sum, task) => sum + (task.of ? 0 : task.hours), 0),
      ),
      quantity: hours,
      unit: 'h',
    };
  });
}

function materialCosts(job: Job, inputs: OfferInputs, terms: OfferTerms): CostLine[] {
  const { leftOver, rounding, locale } = terms;
  return inputs.materials.map((material) => {
    const whole = material.cost ?? 0;
    const cost = leftOver === 'client' ? whole : times(whole, material.used, rounding);
    return {
      kind: 'material',
      id: `material ${material.id}`,
      name: material.name,
      basis:
        material.cost === null
          ? 'no price known'
          : leftOver === 'client'
            ? 'whole packs'
            : `${formatFigure(material.used * 100, locale, 0, 1)} % of ${formatAmount(whole, job.currency, locale)}`,
      cost,
      shares: sharesOf(cost, inputs, (of) => needOf(material, of), 0),
      quantity: 1,
      unit: '',
    };
  });
}

function siteCosts(job: Job, inputs: OfferInputs, terms: OfferTerms): CostLine[] {
  const { setUp, travel, parking, access, protection, wasteRemoval, rounding, locale } = terms;
  const visits = terms.visits ?? inputs.visits;
  const line = (id: string, name: string, price: number, quantity: number, unit: string): CostLine[] => {
    const each = toMinor(price, job.currency);
    const cost = times(each, quantity, rounding);
    if (cost === 0) return [];
    const basis = `${formatFigure(quantity, locale, 0, 2)} ${unit} × ${formatAmount(each, job.currency, locale)}`;
    return [
      { kind: 'site', id, name, basis, cost, shares: sharesOf(cost, inputs, () => 0, 1), quantity, unit },
    ];
  };
  const area = protection?.area ?? squareMetres(inputs.zones.reduce((sum, zone) => sum + zone.trueArea, 0));
  return [
    ...line('visits', 'Set-up', setUp, visits, visits === 1 ? 'visit' : 'visits'),
    ...line('visits', 'Travel', travel, visits, visits === 1 ? 'visit' : 'visits'),
    ...line('visits', 'Parking', parking, visits, visits === 1 ? 'visit' : 'visits'),
    ...access.flatMap((one, i) => {
      const days = one.days ?? inputs.workingDays;
      return one.per === 'day'
        ? line(`access ${i + 1}`, one.name, one.price, days, days === 1 ? 'day' : 'days')
        : line(`access ${i + 1}`, one.name, one.price, 1, 'for the job');
    }),
    ...line('protection', 'Protection of floor and furniture', protection?.rate ?? 0, area, 'm²'),
    ...line('waste', 'Removal of waste', wasteRemoval, 1, 'for the job'),
  ];
}

/**
 * A cost shared out to the zones: by what each of them causes, and what none of them causes by area.
 *
 * @param general how much is caused by the job as a whole, in the unit of `caused`
 */
function sharesOf(
  cost: Minor,
  { zones }: OfferInputs,
  caused: (zone: string) => number,
  general: number,
): ReadonlyMap<string, Minor> {
  const keys = zones.map(keyOf);
  const own = keys.map(caused);
  const areas = zones.map(({ offerArea }) => offerArea);
  const all = areas.reduce((sum, area) => sum + area, 0);
  const spread = own.every((amount) => amount === 0) ? 1 : general;
  const weights = own.map(
    (amount, i) => amount + (all > 0 ? (spread * areas[i]!) / all : spread / keys.length),
  );
  const parts = shareOut(cost, weights);
  return new Map(keys.map((key, i) => [key, parts[i]!]));
}

function needOf({ needs }: OfferMaterial, of: string): number {
  return needs.reduce(
    (sum, need: ZoneRef & { amount: number }) => sum + (keyOf(need) === of ? need.amount : 0),
    0,
  );
}

/** Sums of hours without binary dust, to a thousandth. */
function tidyHours(hours: number): number {
  return Number(hours.toFixed(3));
}
