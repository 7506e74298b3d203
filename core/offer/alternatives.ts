import { dayInWords } from '../job/day-in-words';
import { kindsInWords, type KindWords } from './kind-words';
import { formatMoney, sumOf, type Minor } from './money';
import type { OfferInputs, ReadyDates } from './offer-inputs';
import type { ClientPrices } from './views';

/** An alternative of a job with its price. */
export interface PricedAlternative {
  readonly title: string;
  /** Build-up kinds of its zones. */
  readonly buildUps: readonly string[];
  readonly prices: ClientPrices;
  readonly inputs: Pick<OfferInputs, 'workingDays' | 'ready' | 'handover'>;
}

/** A figure of all alternatives side by side. */
export interface ComparedRow {
  readonly label: string;
  /** One for each, in their order. */
  readonly values: readonly string[];
  readonly differs: boolean;
}

export interface ComparedAlternatives {
  readonly titles: readonly string[];
  readonly rows: readonly ComparedRow[];
  /** What each build-up of each alternative does and does not. */
  readonly uses: readonly (readonly { readonly label: string; readonly words: KindWords }[])[];
  /** Of each but the first against the first, in a sentence. */
  readonly differences: readonly string[];
}

/** Alternatives of one job side by side: price, visits, days, dates, what they hold and what they do not. */
export function compareAlternatives(alternatives: readonly PricedAlternative[]): ComparedAlternatives {
  const [first, ...others] = alternatives;
  return {
    titles: alternatives.map(({ title }) => title),
    rows: [...priceRows(alternatives), ...timeRows(alternatives)],
    uses: alternatives.map(({ buildUps }) => kindsInWords(buildUps)),
    differences: first ? others.map((other) => differenceInWords(first, other)) : [],
  };
}

/** What each costs, with the tax in it. */
export function priceRows(alternatives: readonly PricedAlternative[]): ComparedRow[] {
  const hasTax = alternatives.some(({ prices }) => prices.taxes.length > 0);
  return [
    rowOf(alternatives, hasTax ? 'Price with tax' : 'Price before tax', ({ prices }) =>
      money(prices.gross, prices),
    ),
    ...(hasTax
      ? [
          rowOf(alternatives, 'Tax in it', ({ prices }) =>
            money(sumOf(prices.taxes.map(({ amount }) => amount)), prices),
          ),
        ]
      : []),
  ];
}

/** How long each takes and when it is ready; nothing of money. A row that says nothing of any is left out. */
export function timeRows(alternatives: readonly PricedAlternative[]): ComparedRow[] {
  return [
    rowOf(alternatives, 'Visits', ({ prices }) => String(prices.visits)),
    rowOf(alternatives, 'Working days on site', ({ inputs }) => String(inputs.workingDays)),
    rowOf(alternatives, 'Ready for magnets', ({ inputs }) => latest(inputs.ready, 'magnets')),
    rowOf(alternatives, 'Ready for writing', ({ inputs }) => latest(inputs.ready, 'writing')),
    rowOf(alternatives, 'Handover', ({ inputs }) =>
      inputs.handover === null ? 'not planned yet' : dayInWords(inputs.handover),
    ),
  ].filter(({ values }) => values.some((value) => value !== never));
}

function rowOf(
  alternatives: readonly PricedAlternative[],
  label: string,
  value: (of: PricedAlternative) => string,
): ComparedRow {
  const values = alternatives.map(value);
  return { label, values, differs: new Set(values).size > 1 };
}

const never = '–';

/** The day by which the last zone is ready that ever will be. */
export function latest(ready: readonly ReadyDates[], use: 'magnets' | 'writing'): string {
  const days = ready.flatMap((dates) => dates[use] ?? []);
  return days.length === 0 ? never : dayInWords(days.reduce((a, b) => (byDay.compare(a, b) > 0 ? a : b)));
}

/** `day 9` comes before `day 12`. */
const byDay = new Intl.Collator('en', { numeric: true });

function differenceInWords(first: PricedAlternative, other: PricedAlternative): string {
  const said = [
    changeInWords(
      other.prices.gross - first.prices.gross,
      (by) => money(by, other.prices),
      'costs',
      'more',
      'less',
    ),
    changeInWords(
      other.prices.visits - first.prices.visits,
      (by) => counted(by, 'visit'),
      'takes',
      'more',
      'fewer',
    ),
    changeInWords(
      other.inputs.workingDays - first.inputs.workingDays,
      (by) => counted(by, 'working day'),
      'takes',
      'more',
      'fewer',
    ),
  ].filter(Boolean);
  const words = said.length === 0 ? 'costs the same and takes as long' : joined(said);
  return `${other.title} ${words} ${said.length === 0 ? 'as' : 'than'} ${first.title}.`;
}

function changeInWords(
  by: number,
  write: (size: number) => string,
  verb: string,
  more: string,
  less: string,
): string {
  return by === 0 ? '' : `${verb} ${write(Math.abs(by))} ${by > 0 ? more : less}`;
}

function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}

function joined(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)!}`;
}

/** With the currency's code: fonts of documents lack some signs. */
function money(amount: Minor, { currency, locale }: ClientPrices): string {
  return formatMoney(amount, currency, locale, 'code');
}
