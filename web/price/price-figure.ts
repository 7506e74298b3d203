import { endText } from '../../core/programme/day-text';
import { formatAmount, formatFigure, formatMoney } from '../../core/offer/money';
import type { PricedJob } from '../../core/offer/price-job';
import type { Finding } from '../../core/finding';
import type { KeyFigure } from '../findings/key-figure';
import { withPoint } from '../look/figures';

/** The price of the whole job, and what it is made of. */
export function priceFigure({ takeOff, programme, inputs, offer }: PricedJob): KeyFigure {
  const money = (amount: number) => formatMoney(amount, offer.currency, offer.locale, 'code');
  const { ready, handover, settings } = programme;
  const day = (minute: number | null) => (minute === null ? '–' : endText(minute, settings));
  const hours = inputs.labour.reduce((sum, one) => sum + one.hours, 0);
  return {
    heading: 'Price, whole job',
    figure: formatAmount(offer.gross, offer.currency, offer.locale),
    unit: `${offer.currency} ${offer.taxes.length > 0 ? 'with tax' : 'before tax'}`,
    proof: takeOff.isWholeCost
      ? null
      : 'Some materials have no price yet: products get theirs under Products, stock sheets at Panels, pieces and sundries under Materials.',
    rows: [
      { label: 'Materials', value: money(takeOff.cost) },
      { label: 'Labour', value: `${formatFigure(hours, offer.locale, 0, 1)} h` },
      { label: 'Visits', value: String(offer.visits) },
      ...(ready.magnets === null ? [] : [{ label: 'Ready for magnets', value: day(ready.magnets) }]),
      ...(ready.writing === null ? [] : [{ label: 'Ready for writing', value: day(ready.writing) }]),
      { label: 'Handover', value: day(handover) },
    ],
  };
}

export function priceFindings({ takeOff, programme, offer }: PricedJob): readonly Finding[] {
  const others = [...takeOff.findings, ...programme.findings];
  // The offer writes its figures as the job wants them, on the screen as on paper.
  return [...offer.findings, ...others.map((finding) => ({ ...finding, text: withPoint(finding.text) }))];
}
