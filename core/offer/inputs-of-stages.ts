import { regionArea } from '../geometry/polygon';
import { dayText } from '../programme/day-text';
import { dayMinutes, isWorkingDay, lastDayOf, type Minute } from '../programme/calendar';
import type { Programme } from '../programme/programme';
import { measuredBy, measuredMaterials } from '../quantities/for-offer';
import { settingsOf } from '../quantities/settings';
import type { TakeOff } from '../quantities/take-off';
import type { WorkedOut, WorkedWall } from '../worked-out';
import { toMinor } from './money';
import type { OfferInputs, OfferLabour, OfferMaterial, ReadyDates } from './offer-inputs';

/** What a job is priced from, out of its take-off and its programme. */
export function offerInputs(
  worked: Pick<WorkedOut, 'job' | 'walls' | 'cutting'>,
  quantities: TakeOff,
  programme: Programme,
): OfferInputs {
  const { measurement } = settingsOf(worked.job);
  return {
    zones: quantities.offerAreas,
    materials: [...measuredMaterials(quantities), ...rackOf(worked)],
    labour: labourOf(programme),
    visits: programme.visits.length,
    workingDays: workingDaysOf(programme),
    measuredBy: measuredBy(measurement),
    ready: readyOf(worked.walls, programme),
    handover: programme.handover === null ? null : dayText(lastDayOf(programme.handover), programme.settings),
  };
}

/** What rack pieces that the plan uses cost, where they have a value. */
function rackOf({ job, walls, cutting }: Pick<WorkedOut, 'job' | 'walls' | 'cutting'>): OfferMaterial[] {
  const used = cutting.sheets.flatMap(({ fromRack, placements }) => {
    const piece = fromRack === null ? undefined : job.rack.find(({ id }) => id === fromRack);
    return piece?.value ? [{ piece, placements }] : [];
  });
  return used.map(({ piece, placements }) => {
    const marks = new Set(placements.map(({ mark }) => mark));
    return {
      id: `rack ${piece.id}`,
      name: `Rack piece ${piece.id}`,
      cost: toMinor(piece.value!, job.currency),
      used: 1,
      needs: walls.flatMap(({ survey, zones }) =>
        zones.flatMap(({ area, layout }) => {
          const own = (layout?.panels ?? []).filter(({ mark }) => marks.has(mark));
          const amount = regionArea(own.map(({ outline }) => outline)) / 1e10;
          return amount > 0 ? [{ wall: survey.wall.id, zone: area.zone.id, amount }] : [];
        }),
      ),
    };
  });
}

/** Hours of one person: the crew works together. */
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
    const days = Array.from({ length: last - first + 1 }, (_, i) => first + i);
    return sum + days.filter((day) => isWorkingDay(settings.calendar, day)).length;
  }, 0);
}

/**
 * The first whole day: who reads only a day comes in the morning of it. What is ready by the handover is ready on its day,
 * as nobody has the wall before.
 */
function readyOf(walls: readonly WorkedWall[], { tasks, settings, handover }: Programme): ReadyDates[] {
  const dayOfReady = (finish: Minute) => {
    const whole = Math.ceil(finish / dayMinutes);
    return handover !== null && finish <= handover ? Math.min(whole, lastDayOf(handover)) : whole;
  };
  return walls.flatMap(({ survey, zones }) =>
    zones.map(({ area }) => {
      const at = (kind: 'magnets' | 'writing') => {
        const event = tasks.find(
          (task) => task.kind === kind && task.wall === survey.wall.id && task.zone === area.zone.id,
        );
        return event ? dayText(dayOfReady(event.finish), settings) : null;
      };
      return { wall: survey.wall.id, zone: area.zone.id, magnets: at('magnets'), writing: at('writing') };
    }),
  );
}
