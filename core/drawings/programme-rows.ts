import { nameOfWall, nameOfZone, sentence } from '../job/names';
import type { Job } from '../job/schema';
import { dayMinutes, dayOf, type Minute } from '../programme/calendar';
import { dayText, endText, startText } from '../programme/day-text';
import type { DatedTask, Programme } from '../programme/programme';
import { formatMm } from './figures';

/** A line of the bar chart. */
export type ChartRow = ChartGroup | ChartTask;

export interface ChartGroup {
  readonly kind: 'group';
  readonly text: string;
}

/** Minutes as in the programme; words as they are printed. */
export interface ChartTask {
  readonly kind: 'task';
  readonly name: string;
  readonly start: Minute;
  readonly finish: Minute;
  /** `visit`: several tasks together; `none`: nothing is drawn, as of a dummy that takes no time. */
  readonly mark: 'work' | 'visit' | 'event' | 'none';
  readonly critical: boolean;
  /** Drying, hardening or curing after it. */
  readonly waits: readonly { readonly start: Minute; readonly finish: Minute }[];
  readonly begins: string;
  readonly ends: string;
  /** `critical`, or the total float: `3,5 h`. */
  readonly float: string;
}

/** Visits, supply, every zone with its tasks in their order, and what concerns the whole job. */
export function chartRows(job: Job, programme: Programme): ChartRow[] {
  const { tasks } = programme;
  if (tasks.length === 0) return [];
  const waits = waitsByTask(programme);
  const rowOf = (task: DatedTask, i: number) => taskRow(programme, task, waits.get(i) ?? []);
  const groups = job.walls.flatMap((wall) =>
    wall.zones.flatMap((zone): ChartRow[] => {
      const own = tasks.flatMap((task, i) =>
        task.wall === wall.id && task.zone === zone.id ? [rowOf(task, i)] : [],
      );
      if (own.length === 0) return [];
      return [{ kind: 'group', text: `${sentence(nameOfWall(wall))}, ${nameOfZone(zone)}` }, ...own];
    }),
  );
  const whole = tasks.flatMap((task, i) => (task.wall === undefined ? [rowOf(task, i)] : []));
  return [
    { kind: 'group', text: 'Visits' },
    ...visitRows(programme),
    { kind: 'group', text: 'Supply' },
    ...supplyRows(programme),
    ...groups,
    { kind: 'group', text: 'The whole job' },
    ...readyRows(programme),
    ...whole,
  ];
}

function taskRow(
  { settings }: Programme,
  { name, start, finish, work, critical, totalFloat }: DatedTask,
  waits: ChartTask['waits'],
): ChartTask {
  return {
    kind: 'task',
    name,
    start,
    finish,
    mark: work === 0 ? 'event' : 'work',
    critical,
    waits,
    begins: work === 0 ? '' : startText(start, settings),
    ends: endText(finish, settings),
    float: critical ? 'critical' : `${formatMm(totalFloat / 60)} h`,
  };
}

function waitsByTask({ waits }: Programme): Map<number, ChartTask['waits'][number][]> {
  const byTask = new Map<number, ChartTask['waits'][number][]>();
  for (const { after, start, finish } of waits) {
    byTask.set(after, [...(byTask.get(after) ?? []), { start, finish }]);
  }
  return byTask;
}

function visitRows({ visits, settings }: Programme): ChartTask[] {
  return visits.map(({ first, last }, i) => ({
    kind: 'task',
    name: `Visit ${i + 1}`,
    start: first * dayMinutes,
    finish: (last + 1) * dayMinutes,
    mark: 'visit',
    critical: false,
    waits: [],
    begins: dayText(first, settings),
    ends: dayText(last, settings),
    float: '',
  }));
}

function supplyRows({ supply, settings }: Programme): ChartTask[] {
  const { order, delivery, acclimatised, decides } = supply;
  const event = (name: string, at: Minute, until: Minute): ChartTask => ({
    kind: 'task',
    name,
    start: at,
    finish: at,
    mark: 'event',
    critical: decides,
    waits: until > at ? [{ start: at, finish: until }] : [],
    begins: '',
    ends: dayText(at === delivery ? dayOf(at - 1) : dayOf(at), settings),
    float: decides ? 'critical' : '',
  });
  const atTheLatest = decides ? '' : ', at the latest';
  return [
    event(`Order materials${atTheLatest}`, order * dayMinutes, delivery),
    event(`Delivery, then the materials take the climate of the room`, delivery, acclimatised),
  ];
}

function readyRows({ ready, settings }: Programme): ChartTask[] {
  const row = (name: string, at: Minute | null): ChartTask[] =>
    at === null
      ? []
      : [
          {
            kind: 'task',
            name,
            start: at,
            finish: at,
            mark: 'event',
            critical: false,
            waits: [],
            begins: '',
            ends: endText(at, settings),
            float: '',
          },
        ];
  return [
    ...row('All zones ready for magnets', ready.magnets),
    ...row('All zones ready for writing', ready.writing),
  ];
}
