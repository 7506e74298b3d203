import type { CostLine } from './costs';
import type { PricedLine, PricedLineKind } from './offer-lines';
import type { Payment } from './payments';
import type { PricedOffer } from './price';
import type { Minor } from './money';

/*
 * Two views of a price. What a client gets is built from named fields, so that no cost can slip in with a new one.
 */

export interface ClientLine {
  readonly id: string;
  readonly kind: PricedLineKind;
  readonly title: string;
  readonly quantity: number;
  /** Empty: a lump sum. */
  readonly unit: string;
  readonly unitPrice: Minor;
  readonly amount: Minor;
  /** Place of its tax in `taxes`, from 1; null: none, or of a discount, which lessens every tax. */
  readonly tax: number | null;
  readonly basis: string;
}

export interface ClientTax {
  readonly words: string;
  readonly base: Minor;
  readonly amount: Minor;
}

/** What a client may see of a price: no cost, no overhead, no markup. */
export interface ClientPrices {
  readonly currency: string;
  readonly locale: string;
  readonly lines: readonly ClientLine[];
  /** Before tax, in no sum. */
  readonly options: readonly ClientLine[];
  readonly net: Minor;
  readonly taxes: readonly ClientTax[];
  readonly gross: Minor;
  readonly payments: readonly Payment[];
  readonly validUntil: string | null;
  readonly validityDays: number;
  readonly rounding: string;
  readonly measured: string;
  readonly visits: number;
}

export function clientPrices(offer: PricedOffer): ClientPrices {
  const { currency, locale, lines, options, net, taxes, gross, payments } = offer;
  const { validUntil, validityDays, rounding, measured, visits } = offer;
  const placeOf = ({ tax }: PricedLine) => taxes.findIndex((one) => one.tax.id === tax?.id) + 1;
  const lineOf = (line: PricedLine): ClientLine => ({
    id: line.id,
    kind: line.kind,
    title: line.title,
    quantity: line.quantity,
    unit: line.unit,
    unitPrice: line.unitPrice,
    amount: line.amount,
    tax: placeOf(line) || null,
    basis: line.basis,
  });
  return {
    currency,
    locale,
    lines: lines.map(lineOf),
    options: options.map(lineOf),
    net,
    taxes: taxes.map(({ words, base, amount }) => ({ words, base, amount })),
    gross,
    payments,
    validUntil,
    validityDays,
    rounding,
    measured,
    visits,
  };
}

/** A figure with how it comes about. */
export interface InternalRow {
  readonly name: string;
  readonly basis: string;
  readonly amount: Minor;
  readonly strong?: boolean;
}

/** The way from costs to the net price, for the firm: every row follows from those above it. */
export function internalRows({ internal, lines, options, net }: PricedOffer): InternalRow[] {
  const { costs, direct, overhead, markup, roundedAway, result } = internal;
  const names: Readonly<Record<CostLine['kind'], string>> = {
    labour: 'Labour',
    material: 'Materials',
    site: 'Site',
  };
  const beside = lines.filter(({ kind }) => kind !== 'work' && kind !== 'site');
  return [
    ...costs.map(({ kind, name, basis, cost }) => ({ name: `${names[kind]}: ${name}`, basis, amount: cost })),
    { name: 'Costs', basis: 'sum', amount: direct, strong: true },
    { name: 'Overhead', basis: 'on costs', amount: overhead },
    { name: 'Markup', basis: 'on costs and overhead', amount: markup },
    { name: 'Rounding to unit prices', basis: 'quantity × rounded unit price', amount: roundedAway },
    ...beside.map(({ title, basis, amount }) => ({ name: title, basis, amount })),
    {
      name: 'Net price',
      basis: 'costs, overhead, markup, rounding and the rows above',
      amount: net,
      strong: true,
    },
    {
      name: 'Result',
      basis: 'net price without provisional sums, less costs and overhead',
      amount: result,
      strong: true,
    },
    ...options.map(({ title, basis, amount }) => ({
      name: `Optional, in no sum: ${title}`,
      basis,
      amount,
    })),
  ];
}
