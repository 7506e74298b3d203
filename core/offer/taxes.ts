import type { TaxKind } from '../job/offer-schema';
import type { Job } from '../job/schema';
import { percentOf, shareOut, sumOf, type Minor } from './money';
import type { PricedLine } from './offer-lines';
import { termsOf } from './usual-prices';

/** A tax with what it is taken on. */
export interface TaxSum {
  readonly tax: TaxKind;
  /** Sum of its lines, each with its share of the discount. */
  readonly base: Minor;
  /** 0 where the client accounts for it. */
  readonly amount: Minor;
  /** `VAT 20 %`, and who accounts for it where the firm does not. */
  readonly words: string;
}

/** Invoices without tax say these words. Source: Directive 2006/112/EC, article 226 (11a) (from memory). */
export const reverseChargeWords = 'Reverse charge: the client accounts for this tax to the tax authority.';

/** The tax of a line: chosen for the line, else of its own, else the usual one; null where the offer has none. */
export function taxOfLine(job: Job, line: string, own?: string): TaxKind | null {
  const { taxes, tax: usual, lineTaxes } = termsOf(job);
  const id = lineTaxes.find((one) => one.line === line)?.tax ?? own ?? usual;
  return taxes.find((tax) => tax.id === id) ?? taxes[0] ?? null;
}

/**
 * The taxes of an offer in their order, those of no line left out. A discount lessens every line by its share.
 *
 * Rounded once for each tax, or for each line, as the job says: the two may differ by some minor units, so an offer says
 * which it is. Source: HMRC VATREC12010 on Notice 700, paragraph 17.5, which allows both.
 */
export function taxSumsOf(
  job: Job,
  lines: readonly PricedLine[],
  percentInWords: (percent: number) => string,
): TaxSum[] {
  const { taxes, taxRounding, rounding } = termsOf(job);
  const reduced = withDiscountShared(lines);
  return taxes.flatMap((tax): TaxSum[] => {
    const own = reduced.filter((line) => line.tax?.id === tax.id).map(({ amount }) => amount);
    if (own.length === 0) return [];
    const base = sumOf(own);
    const charged =
      taxRounding === 'per-line'
        ? sumOf(own.map((amount) => percentOf(amount, tax.percent, rounding)))
        : percentOf(base, tax.percent, rounding);
    const name = `${tax.name} ${percentInWords(tax.percent)}`;
    const said = tax.words || (tax.reverseCharge ? reverseChargeWords : '');
    return [{ tax, base, amount: tax.reverseCharge ? 0 : charged, words: said ? `${name}. ${said}` : name }];
  });
}

/** The lines that a discount reduces, each less its share; the others as they are. */
function withDiscountShared(lines: readonly PricedLine[]): Pick<PricedLine, 'amount' | 'tax'>[] {
  const discount = sumOf(lines.filter(({ kind }) => kind === 'discount').map(({ amount }) => amount));
  const isReduced = ({ kind }: PricedLine) => kind === 'work' || kind === 'site' || kind === 'extra';
  const reduced = lines.filter(isReduced);
  const shares = shareOut(
    discount,
    reduced.map(({ amount }) => amount),
  );
  return [
    ...reduced.map(({ amount, tax }, i) => ({ amount: amount + (shares[i] ?? 0), tax })),
    ...lines.filter((line) => !isReduced(line) && line.kind !== 'discount'),
  ];
}
