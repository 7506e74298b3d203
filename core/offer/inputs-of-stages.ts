import { regionArea } from '../geometry/polygon';
import { dayText } from '../programme/day-text';
import { dayMinutes, isWorkingDay, lastDayOf } from '../programme/calendar';
import type { Programme } from '../programme/programme';
import type { MaterialLine } from '../quantities/material-lines';
import { measurementRule, offerArea } from '../quantities/measurement-rules';
import { itemOfStock } from '../quantities/need';
import { settingsOf } from '../quantities/settings';
import type { TakeOff } from '../quantities/take-off';
import type { WorkedOut, WorkedWall } from '../worked-out';
import { formatFigure, toMinor } from './money';
import type { OfferInputs, OfferLabour, OfferMaterial, OfferZone, ReadyDates } from './offer-inputs';
import { termsOf } from './usual-prices';

/** What a job is priced from, out of its take-off and its programme. */
export function offerInputs(
  worked: Pick<WorkedOut, 'job' | 'walls' | 'cutting'>,
  quantities: TakeOff,
  programme: Programme,
): OfferInputs {
  const rule = measurementRule(settingsOf(worked.job).measurement);
  return {
    zones: zonesOf(quantities, rule),
    materials: [...quantities.lines.map((line) => materialOf(line, worked, quantities)), ...rackOf(worked)],
    labour: labourOf(programme),
    visits: programme.visits.length,
    workingDays: workingDaysOf(programme),
    measuredBy: rule.id === 'net' ? '' : rule.name,
    ready: readyOf(worked.walls, programme),
    handover: programme.handover === null ? null : dayText(lastDayOf(programme.handover), programme.settings),
  };
}

function zonesOf({ walls }: TakeOff, rule: ReturnType<typeof measurementRule>): OfferZone[] {
  return walls.flatMap(({ wall: { survey }, zones }) =>
    zones.map(({ measures }) => {
      const { trueArea, area } = offerArea(survey, measures, rule);
      return { wall: survey.wall.id, zone: measures.zone.id, trueArea, offerArea: area };
    }),
  );
}

function materialOf(
  line: MaterialLine,
  { job, walls }: Pick<WorkedOut, 'job' | 'walls'>,
  { needs }: TakeOff,
): OfferMaterial {
  const { item, name, unit, packs, cost, net, withLoss, group } = line;
  const { locale } = termsOf(job);
  const bought = (packs?.packs ?? []).map(
    ({ count, size }) => `${count} × ${formatFigure(size, locale, 0, 3)} ${unit}`,
  );
  // Of stock sheets the spares are what is left over.
  const taken = group === 'steel' ? net : withLoss;
  const own = needs.filter((need) => need.item === item && need.zone !== '');
  return {
    id: item,
    name: [name, ...bought].join(', '),
    cost,
    used: packs && packs.total > 0 ? Math.min(1, taken / packs.total) : 1,
    needs:
      group === 'steel'
        ? steelNeeds(item, walls)
        : own.map(({ wall, zone, withLoss: amount }) => ({ wall, zone, amount })),
  };
}

/** How much of a stock sheet's steel each zone has, in m². */
function steelNeeds(item: string, walls: readonly WorkedWall[]): OfferMaterial['needs'] {
  return walls.flatMap(({ survey, zones }) =>
    zones.flatMap(({ area, layout }) => {
      const panels = (layout?.panels ?? []).filter(({ stock }) => itemOfStock(stock) === item);
      if (panels.length === 0) return [];
      const amount = regionArea(panels.map(({ outline }) => outline)) / 1e10;
      return [{ wall: survey.wall.id, zone: area.zone.id, amount }];
    }),
  );
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

/** The first whole day: who reads only a day comes in the morning of it. */
function readyOf(walls: readonly WorkedWall[], { tasks, settings }: Programme): ReadyDates[] {
  return walls.flatMap(({ survey, zones }) =>
    zones.map(({ area }) => {
      const at = (kind: 'magnets' | 'writing') => {
        const event = tasks.find(
          (task) => task.kind === kind && task.wall === survey.wall.id && task.zone === area.zone.id,
        );
        return event ? dayText(Math.ceil(event.finish / dayMinutes), settings) : null;
      };
      return { wall: survey.wall.id, zone: area.zone.id, magnets: at('magnets'), writing: at('writing') };
    }),
  );
}
