import { buildUpOf } from '../build-up/resolve';
import { finishLevels, type FinishLevel } from '../job/offer-schema';
import type { Job } from '../job/schema';
import { squareMetres } from './areas';
import { times, toMinor } from './money';
import type { OfferInputs, OfferZone } from './offer-inputs';
import type { PricedLine } from './offer-lines';
import { taxOfLine } from './taxes';
import { finishWords } from './usual-words';
import { termsOf } from './usual-prices';

/** A line for each level of finish that has a price of its own, over the zones that are filled to it. */
export function finishLines(job: Job, { zones }: Pick<OfferInputs, 'zones'>): PricedLine[] {
  const { finish, rounding } = termsOf(job);
  return finishLevels.flatMap((level): PricedLine[] => {
    const unitPrice = toMinor(finish.prices?.[level] ?? 0, job.currency);
    const area = zones
      .filter((zone) => levelOf(job, zone) === level)
      .reduce((sum, { offerArea }) => sum + offerArea, 0);
    const quantity = squareMetres(area);
    if (unitPrice === 0 || quantity === 0) return [];
    const id = `finish ${level}`;
    return [
      {
        id,
        kind: 'extra',
        title: `Finish to level ${level}`,
        quantity,
        unit: 'm²',
        unitPrice,
        amount: times(unitPrice, quantity, rounding),
        tax: taxOfLine(job, id),
        basis: `${finishWords[level]}${finish.rakingLight ? ' Judged in raking light too.' : ''}`,
        cost: 0,
        costBasis: 'By the price of the level; its cost is not known.',
      },
    ];
  });
}

/** What a zone is filled to: its own level, else the offer's; undefined where nothing is filled or no level is agreed. */
function levelOf(job: Job, { wall: wallId, zone: zoneId }: OfferZone): FinishLevel | undefined {
  const wall = job.walls.find(({ id }) => id === wallId);
  const zone = wall?.zones.find(({ id }) => id === zoneId);
  if (!wall || !zone) return undefined;
  const isFilled = buildUpOf(job, zone, wall.ground).layers.some(
    ({ layer }) => layer.kind === 'filler' || layer.kind === 'smoothing',
  );
  return isFilled ? (zone.finishLevel ?? termsOf(job).finish.level) : undefined;
}
