import { shiftOf, usualHours } from '../job/check-programme';
import { dayNumber } from '../job/day';
import type { ProgrammeSettings } from '../job/programme-schema';
import type { Job } from '../job/schema';
import {
  dayMinutes,
  dayOf,
  endOfWork,
  hour,
  startOfWork,
  workBefore,
  workCalendar,
  type Minute,
  type WorkCalendar,
} from './calendar';
import { usualProgramme, usualSlowing } from './usual-rates';

/** The job's programme with usual values in place of what it does not say. */
export interface Settings {
  readonly calendar: WorkCalendar;
  readonly crew: number;
  readonly rates: NonNullable<ProgrammeSettings['rates']>;
  readonly climate: NonNullable<ProgrammeSettings['climate']>;
  readonly slowing: { readonly factor: number; readonly below: number; readonly above: number };
  /** Working minutes. */
  readonly inspection: number;
  readonly snags: number;
  readonly visitGap: number;
  /** The first working minute on site. */
  readonly begin: Minute;
  /** The day of `begin` where the job names none: then days count from it. */
  readonly dayOne: number | null;
  readonly supply: Supply;
}

/** When materials are ordered, come, and have taken the climate of the room. */
export interface Supply {
  /** Day number. */
  readonly order: number;
  readonly delivery: Minute;
  readonly acclimatised: Minute;
  /** Whether the work waits for them; else they are due at the latest. */
  readonly decides: boolean;
  /** Whether they come after the day on which the work was to begin. */
  readonly late: boolean;
}

/** 1970-01-05, a Monday: where no day is named, the week begins with the work. */
const someMonday = 4;

export function settingsOf({ programme = {} }: Job): Settings {
  const { hours = {}, slowing, start, ordered } = programme;
  const weekend = programme.weekends ? [6, 7] : [];
  const weekdays = [...(programme.weekdays ?? usualProgramme.weekdays), ...weekend];
  const isDated = start !== undefined || ordered !== undefined;
  const holidays = isDated ? (programme.holidays ?? []).map((day) => dayNumber(day)!) : [];
  const calendar = programme.nights
    ? workCalendar({ from: 0, to: dayMinutes, weekdays, holidays })
    : workCalendar({ ...shiftOf(hours), pause: pauseOf(hours), weekdays, holidays });
  const supply = supplyOf(programme, calendar, isDated);
  return {
    calendar,
    crew: programme.crew ?? usualProgramme.crew,
    rates: programme.rates ?? {},
    climate: programme.climate ?? {},
    slowing: {
      factor: slowing?.factor ?? usualSlowing.factor,
      below: slowing?.below ?? usualSlowing.below,
      above: slowing?.above ?? usualSlowing.above,
    },
    inspection: minutesOf(programme.inspection ?? usualProgramme.inspection),
    snags: minutesOf(programme.snags ?? usualProgramme.snags),
    visitGap: minutesOf(programme.visitGap ?? usualProgramme.visitGap),
    begin: supply.begin,
    dayOne: isDated ? null : dayOf(supply.begin),
    supply: supply.supply,
  };
}

/** Hours as whole minutes; what is begun counts. */
export function minutesOf(hours: number): number {
  return Math.ceil(hours * hour - 1e-9);
}

/** A short day without a break of its own has none. */
function pauseOf(hours: NonNullable<ProgrammeSettings['hours']>): number {
  if (hours.break !== undefined) return hours.break;
  const { from, to } = shiftOf(hours);
  return to - from > 6 * hour ? usualHours.break : 0;
}

function supplyOf(
  { start, ordered, leadTime, acclimatise }: ProgrammeSettings,
  calendar: WorkCalendar,
  isDated: boolean,
): { begin: Minute; supply: Supply } {
  const lead = Math.ceil(leadTime ?? usualProgramme.leadTime);
  const lying = minutesOf(acclimatise ?? usualProgramme.acclimatise);
  const firstWork = (minute: Minute) => startOfWork(calendar, workBefore(calendar, minute));
  const wanted = start === undefined ? (isDated ? null : someMonday) : dayNumber(start)!;
  const wantedBegin = wanted === null ? -Infinity : firstWork(wanted * dayMinutes);
  if (ordered !== undefined) {
    const order = dayNumber(ordered)!;
    const delivery = firstWork((order + lead) * dayMinutes);
    const acclimatised = delivery + lying;
    const begin = Math.max(wantedBegin, firstWork(acclimatised));
    const decides = begin > wantedBegin;
    return {
      begin,
      supply: { order, delivery, acclimatised, decides, late: decides && wanted !== null },
    };
  }
  // Somebody has to be there to take them in.
  const delivery = endOfWork(calendar, workBefore(calendar, wantedBegin - lying));
  const order = Math.ceil(delivery / dayMinutes) - 1 - lead;
  return {
    begin: wantedBegin,
    supply: { order, delivery, acclimatised: delivery + lying, decides: false, late: false },
  };
}
