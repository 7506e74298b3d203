import { endText } from '../../core/programme/day-text';
import type { PricedJob } from '../../core/offer/price-job';
import type { Finding } from '../../core/finding';
import type { KeyFigure } from '../findings/key-figure';
import { plainFigure, withPoint } from '../look/figures';
import { moneyFigure } from './amounts';

/** The price of the whole job, and what it is made of. */
export function priceFigure({ takeOff, programme, inputs, offer }: PricedJob): KeyFigure {
  const money = (amount: number) => `${moneyFigure(amount, offer.currency)} ${offer.currency}`;
  const { ready, handover, settings } = programme;
  const day = (minute: number | null) => (minute === null ? '–' : endText(minute, settings));
  const hours = inputs.labour.reduce((sum, one) => sum + one.hours, 0);
  return {
    heading: 'Price, whole job',
    figure: moneyFigure(offer.gross, offer.currency),
    unit: `${offer.currency} ${offer.taxes.length > 0 ? 'with tax' : 'before tax'}`,
    proof: takeOff.isWholeCost
      ? null
      : 'Some materials have no price yet: give their packs one under Products.',
    rows: [
      { label: 'Materials', value: money(takeOff.cost) },
      { label: 'Labour', value: `${plainFigure(hours, 1)} h` },
      { label: 'Visits', value: String(offer.visits) },
      ...(ready.magnets === null ? [] : [{ label: 'Ready for magnets', value: day(ready.magnets) }]),
      ...(ready.writing === null ? [] : [{ label: 'Ready for writing', value: day(ready.writing) }]),
      { label: 'Handover', value: day(handover) },
    ],
  };
}

export function priceFindings({ takeOff, programme, offer }: PricedJob): readonly Finding[] {
  return [...offer.findings, ...takeOff.findings, ...programme.findings].map((finding) => ({
    ...finding,
    text: withPoint(finding.text),
  }));
}
