import type { Finding } from '../finding';
import type { Job } from '../job/schema';
import { percentOf, shareOut, type Minor } from './money';
import { termsOf } from './usual-prices';

export interface Payment {
  readonly name: string;
  readonly amount: Minor;
  /** `30 % of the total` */
  readonly basis: string;
}

/**
 * When a total is paid: the deposit, the stages of what is left, the retention; they add up to the total. Stages that do not
 * come to 100 % leave the rest to completion; stages beyond it are refused with a finding and all is due on completion.
 */
export function paymentsOf(
  job: Job,
  total: Minor,
  percentInWords: (percent: number) => string,
): { payments: Payment[]; findings: Finding[] } {
  const { deposit, retention, retentionUntil, stages, rounding } = termsOf(job);
  const first = percentOf(total, deposit, rounding);
  // Deposit and retention of more than all would ask for more than the price.
  const held = Math.min(percentOf(total, retention, rounding), total - first);
  const given = tidy(stages.reduce((sum, { percent }) => sum + percent, 0));
  const kept = given > 100 ? [] : stages;
  const left = given > 100 ? 100 : tidy(100 - given);
  const parts = [...kept, ...(left > 0 ? [{ name: 'On completion', percent: left }] : [])];
  const shares = shareOut(
    total - first - held,
    parts.map(({ percent }) => percent),
  );
  const aside = deposit > 0 || retention > 0;
  const payments: Payment[] = [
    {
      name: 'Deposit, when this offer is accepted',
      amount: first,
      basis: `${percentInWords(deposit)} of the total`,
    },
    ...parts.map(({ name, percent }, i) => ({
      name,
      amount: shares[i]!,
      basis: `${percentInWords(percent)} of ${aside ? 'the rest' : 'the total'}`,
    })),
    {
      name: retentionUntil ? `Retention, until ${retentionUntil}` : 'Retention',
      amount: held,
      basis: `${percentInWords(retention)} of the total, held back`,
    },
  ].filter(({ amount }) => amount !== 0);
  return {
    payments,
    findings:
      given <= 100
        ? []
        : [
            {
              level: 'warning',
              code: 'offer-stages',
              text: `The payment stages of the offer come to ${percentInWords(given)}; lower them by ${percentInWords(tidy(given - 100))}, until then all that is left is due on completion.`,
            },
          ],
  };
}

/** Sums of typed percentages without binary dust. */
function tidy(percent: number): number {
  return Number(percent.toFixed(6));
}
