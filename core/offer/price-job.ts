import { isoDay } from '../job/day';
import { planProgramme, type DatedTask, type Programme } from '../programme/programme';
import { dayOf, isWorkingDay, lastDayOf } from '../programme/calendar';
import { measuredBy, measuredMaterials } from '../quantities/for-offer';
import { settingsOf } from '../quantities/settings';
import { takeOff, type TakeOff } from '../quantities/take-off';
import type { WorkedOut } from '../worked-out';
import type { OfferInputs, OfferLabour, ReadyDates } from './offer-inputs';
import { priceOffer, type PricedOffer } from './price';

/** What a job takes, when it is done and what it is offered for. */
export interface PricedJob {
  readonly takeOff: TakeOff;
  readonly programme: Programme;
  readonly inputs: OfferInputs;
  readonly offer: PricedOffer;
}

/** Everything behind the panels and their cutting: quantities, programme, offer. */
export function priceJob({ job, walls, cutting }: WorkedOut): PricedJob {
  const amounts = takeOff(job, walls, cutting);
  const programme = planProgramme(job, walls);
  const { measurement } = settingsOf(job);
  const inputs: OfferInputs = {
    zones: amounts.offerAreas,
    materials: measuredMaterials(amounts),
    labour: labourOf(programme),
    visits: programme.visits.length,
    workingDays: workingDaysOf(programme),
    measuredBy: measuredBy(measurement),
    ready: readyOf(programme),
    handover:
      isDated(programme) && programme.handover !== null ? isoDay(lastDayOf(programme.handover)) : null,
  };
  return { takeOff: amounts, programme, inputs, offer: priceOffer(job, inputs) };
}

/** Hours of one person, by task; events take none. */
function labourOf({ tasks, settings }: Programme): OfferLabour[] {
  return tasks
    .filter(({ work }) => work > 0)
    .map(({ kind, work, wall, zone }) => ({
      kind,
      hours: (work / 60) * settings.crew,
      ...(wall !== undefined && zone !== undefined && { of: { wall, zone } }),
    }));
}

function workingDaysOf({ visits, settings }: Programme): number {
  return visits.reduce((sum, { first, last }) => {
    let days = 0;
    for (let day = first; day <= last; day++) if (isWorkingDay(settings.calendar, day)) days++;
    return sum + days;
  }, 0);
}

function isDated({ settings }: Programme): boolean {
  return settings.dayOne === null;
}

/** Of a programme that names no day, none. */
function readyOf(programme: Programme): ReadyDates[] {
  if (!isDated(programme)) return [];
  const byZone = new Map<
    string,
    { wall: string; zone: string; magnets: string | null; writing: string | null }
  >();
  for (const { kind, wall, zone, finish } of programme.tasks) {
    if (wall === undefined || zone === undefined || (kind !== 'magnets' && kind !== 'writing')) continue;
    const key = `${wall}/${zone}`;
    const known = byZone.get(key) ?? { wall, zone, magnets: null, writing: null };
    byZone.set(key, { ...known, [kind]: readyDay(finish) });
  }
  return [...byZone.values()];
}

/** What is ready in the course of a day is ready on the next morning. */
function readyDay(finish: DatedTask['finish']): string {
  return isoDay(dayOf(finish - 1) + 1);
}
