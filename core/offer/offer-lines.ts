import { buildUpKind } from '../job/build-up-kinds';
import type { TaxKind } from '../job/offer-schema';
import type { Job } from '../job/schema';
import { areaForPrice, areaIn, areaInWords, areaUnit } from './areas';
import type { CostLine } from './costs';
import {
  formatAmount,
  formatFigure,
  percentOf,
  perUnit,
  sumOf,
  surcharged,
  times,
  toMinor,
  type Minor,
} from './money';
import { finishLines } from './finish-lines';
import { keyOf, type OfferInputs, type OfferZone } from './offer-inputs';
import { taxOfLine } from './taxes';
import { termsOf } from './usual-prices';

export type PricedLineKind = 'work' | 'site' | 'extra' | 'option' | 'provisional' | 'discount' | 'minimum';

/** A line of the offer before tax; what stands under `cost` and `costBasis` is for the firm alone. */
export interface PricedLine {
  /** Stable: `A/Z1`, `A`, `job`, `visits`, `access 1`, the id of an extra; taxes are chosen by it. */
  readonly id: string;
  readonly kind: PricedLineKind;
  readonly title: string;
  readonly quantity: number;
  /** Empty: a lump sum. */
  readonly unit: string;
  readonly unitPrice: Minor;
  /** Quantity × unit price, rounded. */
  readonly amount: Minor;
  /** null: the offer has no taxes. */
  readonly tax: TaxKind | null;
  /** How the line comes about, in words that a client may read. */
  readonly basis: string;
  readonly cost: Minor;
  readonly costBasis: string;
}

/** All lines before tax, in the order in which they stand on the offer. */
export function linesOf(job: Job, inputs: OfferInputs, costs: readonly CostLine[]): PricedLine[] {
  const spread = termsOf(job).siteCosts === 'in-unit-prices' && hasArea(inputs);
  const priced = [
    ...workLines(job, inputs, spread ? costs : costs.filter(({ kind }) => kind !== 'site')),
    ...(spread ? [] : siteLines(job, costs)),
    ...finishLines(job, inputs),
    ...listedLines(job, inputs, false),
  ];
  const reduced = [...priced, ...discountLine(job, priced)];
  return [...reduced, ...minimumLine(job, reduced), ...provisionalLines(job)];
}

interface Group {
  readonly id: string;
  readonly title: string;
  readonly zones: readonly OfferZone[];
}

function workLines(job: Job, inputs: OfferInputs, costs: readonly CostLine[]): PricedLine[] {
  const { overhead, markup, rounding, locale } = termsOf(job);
  const groups = groupsOf(job, inputs);
  const lines = groups.map(({ id, title, zones }): PricedLine => {
    // Without a zone to bear it a cost falls on the job.
    const bears = (line: CostLine) =>
      zones.length === 0 ? line.cost : sumOf(zones.map((zone) => line.shares.get(keyOf(zone)) ?? 0));
    const cost = sumOf(costs.map(bears));
    const sold = surcharged(cost, [overhead, markup], rounding);
    const offered = zones.reduce((sum, zone) => sum + zone.offerArea, 0);
    const real = zones.reduce((sum, zone) => sum + zone.trueArea, 0);
    const area = areaIn(offered, job.units);
    const [quantity, unit] = area > 0 ? [area, areaUnit(job.units)] : [1, ''];
    const unitPrice = perUnit(sold, quantity, rounding);
    // The rule in full is said once, under the lines.
    const by = inputs.measuredBy ? `Measured by ${inputs.measuredBy.split(':')[0]!}` : 'Measured as built';
    return {
      id,
      kind: 'work',
      title,
      quantity,
      unit,
      unitPrice,
      amount: times(unitPrice, quantity, rounding),
      tax: taxOfLine(job, id),
      basis: `${by}; true area ${areaInWords(real, job.units, locale)}.`,
      cost,
      costBasis: partsInWords(job, costs, bears),
    };
  });
  return lines.filter(({ cost, quantity, unit }) => cost > 0 || (unit !== '' && quantity > 0));
}

/** `labour 600.00, materials 320.00, site 0.00` */
function partsInWords(job: Job, costs: readonly CostLine[], bears: (line: CostLine) => Minor): string {
  const { locale, overhead, markup } = termsOf(job);
  const of = (kind: CostLine['kind']) => sumOf(costs.filter((line) => line.kind === kind).map(bears));
  const parts = (['labour', 'material', 'site'] as const)
    .map((kind) => [kind === 'material' ? 'materials' : kind, of(kind)] as const)
    .filter(([, amount]) => amount !== 0)
    .map(([name, amount]) => `${name} ${formatAmount(amount, job.currency, locale)}`);
  const percent = (value: number) => `${formatFigure(value, locale, 0, 2)} %`;
  return `${parts.join(', ') || 'no cost'}; overhead ${percent(overhead)}, then markup ${percent(markup)}.`;
}

function groupsOf(job: Job, inputs: OfferInputs): Group[] {
  const { lines } = termsOf(job);
  const zones = inputs.zones;
  const walls = job.walls.filter(({ id }) => zones.some(({ wall }) => wall === id));
  if (zones.length === 0 || lines === 'job') return [{ id: 'job', title: job.name, zones }];
  return walls.flatMap((wall): Group[] => {
    const own = zones.filter((zone) => zone.wall === wall.id);
    const name = wall.name || `Wall ${wall.id}`;
    if (lines === 'wall') return [{ id: wall.id, title: name, zones: own }];
    return own.map((one) => {
      const zone = wall.zones.find(({ id }) => id === one.zone);
      const kind = zone ? buildUpKind(zone.buildUp).label.toLowerCase() : '';
      const title = [`${name}: ${zone?.name || `zone ${one.zone}`}`, kind].filter(Boolean).join(', ');
      return { id: keyOf(one), title, zones: [one] };
    });
  });
}

const siteTitles: Readonly<Record<string, string>> = { visits: 'Coming to site, setting up, parking' };

/** Site costs with overhead and markup, those that go into one line together. */
function siteLines(job: Job, costs: readonly CostLine[]): PricedLine[] {
  const { overhead, markup, rounding } = termsOf(job);
  const site = costs.filter(({ kind }) => kind === 'site');
  return [...new Set(site.map(({ id }) => id))].map((id): PricedLine => {
    const own = site.filter((line) => line.id === id);
    const { name, quantity, unit } = own[0]!;
    const cost = sumOf(own.map((line) => line.cost));
    const unitPrice = perUnit(surcharged(cost, [overhead, markup], rounding), quantity, rounding);
    return {
      id,
      kind: 'site',
      title: siteTitles[id] ?? name,
      quantity,
      unit: unit === 'for the job' ? '' : unit,
      unitPrice,
      amount: times(unitPrice, quantity, rounding),
      tax: taxOfLine(job, id),
      basis: id === 'visits' ? 'As many visits as the programme of the work asks for.' : '',
      cost,
      costBasis: own.map((line) => `${line.name}: ${line.basis}`).join('; '),
    };
  });
}

/** Lines that the client may choose besides, before tax; they are in no sum, and no discount reduces them. */
export function optionLines(job: Job, inputs: OfferInputs): PricedLine[] {
  return listedLines(job, inputs, true);
}

function listedLines(job: Job, inputs: OfferInputs, isOption: boolean): PricedLine[] {
  const { extras, priceList, rounding } = termsOf(job);
  return extras
    .filter(({ optional = false }) => optional === isOption)
    .flatMap(({ id, item, quantity, words }): PricedLine[] => {
      const listed = priceList.find((one) => one.id === item);
      if (!listed) return [];
      const area = inputs.zones.reduce((sum, { offerArea }) => sum + offerArea, 0);
      const counted = quantity ?? areaForPrice(area, listed.unit);
      const unitPrice = toMinor(listed.price, job.currency);
      return [
        {
          id,
          kind: isOption ? 'option' : 'extra',
          title: words ? `${listed.name}: ${words}` : listed.name,
          quantity: counted,
          unit: listed.unit,
          unitPrice,
          amount: times(unitPrice, counted, rounding),
          tax: taxOfLine(job, id, listed.tax),
          basis:
            quantity === undefined
              ? 'By the price list, for all zones as they are measured.'
              : 'By the price list.',
          cost: 0,
          costBasis: 'By the price list; its cost is not known.',
        },
      ];
    });
}

function discountLine(job: Job, lines: readonly PricedLine[]): PricedLine[] {
  const { discount, rounding, locale } = termsOf(job);
  const amount = -percentOf(sumOf(lines.map((line) => line.amount)), discount, rounding);
  if (amount === 0) return [];
  const percent = `${formatFigure(discount, locale, 0, 2)} %`;
  const basis = `${percent} of all lines above; provisional sums are not reduced.`;
  return [lumpSum('discount', 'discount', `Discount of ${percent}`, amount, null, basis)];
}

/** What is missing to the least that the firm comes for. */
function minimumLine(job: Job, lines: readonly PricedLine[]): PricedLine[] {
  const { minimumCharge, locale } = termsOf(job);
  const least = toMinor(minimumCharge, job.currency);
  const missing = least - sumOf(lines.map((line) => line.amount));
  if (least === 0 || missing <= 0) return [];
  const basis = `The least charge for a job is ${formatAmount(least, job.currency, locale)} before tax.`;
  return [lumpSum('minimum', 'minimum', 'Up to the least charge', missing, taxOfLine(job, 'minimum'), basis)];
}

function provisionalLines(job: Job): PricedLine[] {
  return termsOf(job).provisionalSums.map(({ id, words, amount, tax }) =>
    lumpSum(
      id,
      'provisional',
      `Provisional sum: ${words}`,
      toMinor(amount, job.currency),
      taxOfLine(job, id, tax),
      'Work that cannot be measured yet; charged as it turns out.',
    ),
  );
}

function lumpSum(
  id: string,
  kind: PricedLineKind,
  title: string,
  amount: Minor,
  tax: TaxKind | null,
  basis: string,
): PricedLine {
  return {
    id,
    kind,
    title,
    quantity: 1,
    unit: '',
    unitPrice: amount,
    amount,
    tax,
    basis,
    cost: 0,
    costBasis: '',
  };
}

function hasArea({ zones }: OfferInputs): boolean {
  return zones.length > 0;
}
