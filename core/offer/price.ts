import type { Finding } from '../finding';
import { dayNumber, isoDay } from '../job/day';
import type { Job } from '../job/schema';
import { costsOf, rateOf, type CostLine } from './costs';
import { formatFigure, formatMoney, percentOf, sumOf, type Minor } from './money';
import type { OfferInputs } from './offer-inputs';
import { linesOf, optionLines, type PricedLine } from './offer-lines';
import { paymentsOf, type Payment } from './payments';
import { taxSumsOf, type TaxSum } from './taxes';
import { termsOf } from './usual-prices';

/** What the firm reckons with; a client never sees it. */
export interface InternalSums {
  readonly costs: readonly CostLine[];
  /** Sum of all costs. */
  readonly direct: Minor;
  readonly overhead: Minor;
  readonly markup: Minor;
  /** What rounding to unit prices adds to or takes from costs, overhead and markup. */
  readonly roundedAway: Minor;
  /** Net price of all but provisional sums less costs and overhead. */
  readonly result: Minor;
}

export interface PricedOffer {
  readonly currency: string;
  readonly locale: string;
  readonly lines: readonly PricedLine[];
  /** What the client may choose besides, before tax: in no sum. */
  readonly options: readonly PricedLine[];
  readonly net: Minor;
  readonly taxes: readonly TaxSum[];
  readonly gross: Minor;
  /** They add up to `gross`. */
  readonly payments: readonly Payment[];
  /** ISO 8601; null where the job has no date. */
  readonly validUntil: string | null;
  readonly validityDays: number;
  /** How sums were rounded, in words. */
  readonly rounding: string;
  /** By what rule areas are measured, as a sentence. */
  readonly measured: string;
  readonly visits: number;
  readonly internal: InternalSums;
  readonly findings: readonly Finding[];
}

/**
 * The price of a job: costs to lines, lines to a net sum, taxes, payments. Sums always hold: lines add up to `net`, `net` and
 * taxes to `gross`, payments to `gross`.
 */
export function priceOffer(job: Job, inputs: OfferInputs): PricedOffer {
  const terms = termsOf(job);
  const { overhead, markup, rounding, locale, validityDays } = terms;
  const percent = (value: number) => `${formatFigure(value, locale, 0, 2)} %`;
  const costs = costsOf(job, inputs);
  const lines = linesOf(job, inputs, costs);
  const net = sumOf(lines.map(({ amount }) => amount));
  const taxes = taxSumsOf(job, lines, percent);
  const gross = net + sumOf(taxes.map(({ amount }) => amount));
  const { payments, findings } = paymentsOf(job, gross, percent);
  const direct = sumOf(costs.map(({ cost }) => cost));
  const overheadSum = percentOf(direct, overhead, rounding);
  const markupSum = percentOf(direct + overheadSum, markup, rounding);
  const ofKind = (...kinds: PricedLine['kind'][]) =>
    sumOf(lines.filter(({ kind }) => kinds.includes(kind)).map(({ amount }) => amount));
  const result = net - ofKind('provisional') - direct - overheadSum;
  const internal: InternalSums = {
    costs,
    direct,
    overhead: overheadSum,
    markup: markupSum,
    roundedAway: ofKind('work', 'site') - direct - overheadSum - markupSum,
    result,
  };
  return {
    currency: job.currency,
    locale,
    lines,
    options: optionLines(job, inputs),
    net,
    taxes,
    gross,
    payments,
    validUntil: lastDay(job.date, validityDays),
    validityDays,
    rounding: roundingInWords(job),
    measured: `Areas are measured ${inputs.measuredBy ? `by ${inputs.measuredBy}` : 'as built'}.`,
    visits: terms.visits ?? inputs.visits,
    internal,
    findings: [...blanksOf(job, inputs, gross, result), ...strayTaxes(job, lines), ...findings],
  };
}

function lastDay(date: string, days: number): string | null {
  const from = dayNumber(date);
  return from === null ? null : isoDay(from + days);
}

function roundingInWords(job: Job): string {
  const { rounding, taxRounding, taxes } = termsOf(job);
  const half = rounding === 'half-up' ? 'halves up' : 'halves to the even figure';
  const tax = taxRounding === 'per-line' ? 'for each line' : 'once for each rate';
  return `Amounts are rounded to the smallest unit of the currency, ${half}${taxes.length > 0 ? `; tax is rounded ${tax}` : ''}.`;
}

/** What a price leaves out because nobody has said it. */
function blanksOf(job: Job, { labour, materials }: OfferInputs, gross: Minor, result: Minor): Finding[] {
  const { taxes, locale } = termsOf(job);
  const warn = (code: string, text: string): Finding => ({ level: 'warning', code, text });
  const unrated = labour.filter(({ kind, hours }) => hours > 0 && rateOf(job, kind) === 0);
  const hours = unrated.reduce((sum, one) => sum + one.hours, 0);
  const kinds = [...new Set(unrated.map(({ kind }) => kind.replaceAll('-', ' ')))];
  const unpriced = materials.filter(({ cost }) => cost === null);
  const named = unpriced.slice(0, 3).map(({ name }) => name);
  const more = unpriced.length > 3 ? ` and ${unpriced.length - 3} more` : '';
  return [
    ...(unrated.length === 0
      ? []
      : [
          warn(
            'offer-no-rate',
            `${formatFigure(hours, locale, 0, 1)} hours of work have no rate and are priced at nothing (${kinds.join(', ')}): give the offer labour rates.`,
          ),
        ]),
    ...(unpriced.length === 0
      ? []
      : [
          warn(
            'offer-no-price',
            `Materials without a price are offered for nothing: ${named.join(', ')}${more}; give their packs prices.`,
          ),
        ]),
    ...(taxes.length === 0
      ? [
          {
            level: 'note' as const,
            code: 'offer-no-tax',
            text: 'The offer has no tax: its total is before tax; give it one, or say that none is due.',
          },
        ]
      : []),
    ...(result < 0
      ? [
          warn(
            'offer-below-cost',
            `The price is ${formatMoney(-result, job.currency, locale)} below costs and overhead: raise the markup or lower the discount.`,
          ),
        ]
      : []),
    ...(Number.isSafeInteger(gross)
      ? []
      : [
          warn(
            'offer-too-large',
            'The sum is larger than can be counted exactly: look for a price with too many figures.',
          ),
        ]),
  ];
}

/** Taxes that were chosen for lines which the offer does not have, or has no more. */
function strayTaxes(job: Job, lines: readonly PricedLine[]): Finding[] {
  const stray = termsOf(job).lineTaxes.filter(({ line }) => !lines.some(({ id }) => id === line));
  if (stray.length === 0) return [];
  const named = stray.map(({ line }) => `“${line}”`).join(', ');
  return [
    {
      level: 'note',
      code: 'offer-stray-tax',
      text: `The offer has a tax for ${named}, but no such line: the usual tax stands where the work is priced otherwise; choose the tax again or take it out.`,
    },
  ];
}
