import type { Mix } from '../quantities/mixing-plan';
import { settingsOf } from '../quantities/settings';
import type { TakeOff } from '../quantities/take-off';
import type { WorkedOut } from '../worked-out';
import { amountText } from './amount-text';
import { deliveryText } from './delivery-text';
import { formatMm } from './figures';
import type { FlowColumn, FlowRow } from './flow-table';
import { paperFigures } from './paper-figures';

export const mixingColumns: readonly FlowColumn[] = [
  { heading: 'Mix', align: 'left', width: 12 },
  { heading: 'For', align: 'left', width: 66 },
  { heading: 'Amount', align: 'right', width: 20 },
  { heading: 'Component A + B', align: 'left', width: 36 },
  { heading: 'Laid in', align: 'right', width: 16 },
  { heading: 'Tape off', align: 'left', width: 20 },
];

/** How two-component products are mixed, coat by coat. */
export function mixingRows({ job }: WorkedOut, { lines, mixing: plans }: TakeOff): FlowRow[] {
  const { temperature, hands } = settingsOf(job);
  const figures = paperFigures(job.units);
  const isOneDelivery = plans.every(({ delivery }) => delivery === '');
  return plans.flatMap((plan): FlowRow[] => {
    const line = lines.find(({ item }) => item === `product ${plan.product}`);
    const unit = line?.unit ?? '';
    const coat = plans.some((one) => one.product === plan.product && one.coat > 1)
      ? `, coat ${plan.coat}`
      : '';
    return [
      {
        kind: 'group',
        text: `${line?.name ?? plan.product}${coat}${isOneDelivery ? '' : `: ${deliveryText(plan.delivery)}`}`,
        aside: `${minutesText(plan.potLife)} at ${formatMm(temperature)} °C, ${hands} ${hands === 1 ? 'person' : 'people'}, at most ${figures.roughly(plan.mostArea * 1e10)}`,
      },
      ...plan.mixes.map((mix): FlowRow => ({
        kind: 'row',
        cells: [
          String(mix.number),
          partsText(mix),
          amountText(mix.amount, unit),
          mix.components
            ? mix.components.map((amount) => amountText(amount, plan.componentUnit)).join(' + ')
            : 'by the ratio on the tin',
          minutesText(mix.minutes),
          mix.maskingOff === null ? '–' : `by ${minutesText(mix.maskingOff)}`,
        ],
      })),
    ];
  });
}

function minutesText(minutes: number): string {
  return `${Math.floor(minutes)}\u00A0min`;
}

/** The first and last section, and where it has to stop within one. */
function partsText({ parts }: Mix): string {
  const first = parts[0]!.section;
  const last = parts.at(-1)!;
  const words = parts.length === 1 ? first : `${first} to ${last.section} (${parts.length})`;
  return last.endsInFace ? `${words}; ends in the face` : words;
}
