import type { Job } from '../job/schema';
import { endText, startText, dayText } from '../programme/day-text';
import type { DatedTask, Programme } from '../programme/programme';
import { csvText } from './csv';

const headings = [
  'entry',
  'wall',
  'wall_name',
  'zone',
  'zone_name',
  'name',
  'begins',
  'ends',
  'working_hours',
  'total_float_hours',
  'free_float_hours',
  'critical',
] as const;

type Row = Readonly<Record<(typeof headings)[number], string | number>>;

const waitNames = { dry: 'Drying', harden: 'Hardening', cure: 'Curing' } as const;

/**
 * The dates of a programme for other programs: visits, supply, tasks, waits and events, one row each; form as in `csvTables`.
 * `entry` is `visit`, `supply`, `task`, `wait` or `event`; days are ISO 8601 with the time after a space, or count from day 1.
 */
export function programmeCsv(job: Job, programme: Programme): string {
  const { settings, tasks, waits, visits, supply } = programme;
  const names = namesOf(job);
  const row = (fields: Partial<Row>): Row => ({ ...blank, ...fields });
  const rows = [
    ...visits.map(({ first, last }, i) =>
      row({
        entry: 'visit',
        name: `Visit ${i + 1}`,
        begins: dayText(first, settings),
        ends: dayText(last, settings),
      }),
    ),
    ...(tasks.length === 0
      ? []
      : [
          row({ entry: 'supply', name: 'Order materials', ends: dayText(supply.order, settings) }),
          row({ entry: 'supply', name: 'Delivery', ends: endText(supply.delivery, settings) }),
          row({ entry: 'supply', name: 'Acclimatised', ends: endText(supply.acclimatised, settings) }),
        ]),
    ...tasks.map((task) =>
      row({
        entry: task.work === 0 ? 'event' : 'task',
        ...placeOf(task, names),
        name: task.name,
        begins: task.work === 0 ? '' : startText(task.start, settings),
        ends: endText(task.finish, settings),
        working_hours: hours(task.work),
        total_float_hours: hours(task.totalFloat),
        free_float_hours: hours(task.freeFloat),
        critical: task.critical ? 'yes' : 'no',
      }),
    ),
    ...waits.map(({ kind, after, start, finish }) =>
      row({
        entry: 'wait',
        ...placeOf(tasks[after]!, names),
        name: `${waitNames[kind]} after: ${tasks[after]!.name}`,
        begins: startText(start, settings),
        ends: endText(finish, settings),
      }),
    ),
  ];
  return csvText(headings, rows);
}

const blank = Object.fromEntries(headings.map((heading) => [heading, ''])) as Row;

interface Names {
  readonly walls: ReadonlyMap<string, string>;
  /** By wall and zone, with a space between: ids of zones come again on other walls. */
  readonly zones: ReadonlyMap<string, string>;
}

function namesOf({ walls }: Job): Names {
  return {
    walls: new Map(walls.map(({ id, name }) => [id, name])),
    zones: new Map(walls.flatMap(({ id, zones }) => zones.map((zone) => [`${id} ${zone.id}`, zone.name]))),
  };
}

function placeOf({ wall, zone }: DatedTask, { walls, zones }: Names): Partial<Row> {
  if (wall === undefined || zone === undefined) return {};
  return {
    wall,
    wall_name: walls.get(wall) ?? '',
    zone,
    zone_name: zones.get(`${wall} ${zone}`) ?? '',
  };
}

function hours(minutes: number): number {
  return Math.round((minutes / 60) * 100) / 100;
}
