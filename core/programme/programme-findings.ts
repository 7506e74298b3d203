import type { Finding } from '../finding';
import { isoDay } from '../job/day';
import { nameOfWall, nameOfZone } from '../job/names';
import type { Job } from '../job/schema';
import { dayOf, hour } from './calendar';
import type { NetworkLink } from './network';
import type { DatedTask } from './programme';
import type { Settings } from './settings';

/** What the dates ask somebody to decide. */
export function programmeFindings(
  job: Job,
  tasks: readonly DatedTask[],
  missed: readonly NetworkLink[],
  settings: Settings,
): Finding[] {
  return [...lateMaterials(settings), ...missedWaits(job, tasks, missed), ...longCoats(job, tasks, settings)];
}

function lateMaterials({ supply, begin }: Settings): Finding[] {
  if (!supply.late) return [];
  return [
    {
      level: 'warning',
      code: 'materials-late',
      text:
        `Materials ordered on ${isoDay(supply.order)} are not there and acclimatised when the work is to begin: it begins ` +
        `on ${isoDay(dayOf(begin))} instead; order sooner, or move the first day.`,
    },
  ];
}

function missedWaits(job: Job, tasks: readonly DatedTask[], missed: readonly NetworkLink[]): Finding[] {
  return missed.map(({ from, to, most = 0 }): Finding => {
    const { wall, zone } = tasks[to]!;
    const latest = hours(most);
    return {
      level: 'warning',
      code: 'recoat-too-late',
      ...(wall !== undefined && { wall, object: zone }),
      text:
        `“${tasks[to]!.name}” in ${placeOf(job, tasks[to]!)} comes ${hours(tasks[to]!.start - tasks[from]!.finish)} after ` +
        `“${tasks[from]!.name}”, which takes it for ${latest} at most: work longer hours there, or key the coat below first.`,
    };
  });
}

function longCoats(job: Job, tasks: readonly DatedTask[], { calendar, crew }: Settings): Finding[] {
  const coats = tasks.filter(({ kind, work }) => kind === 'coat' && work > calendar.dayWork);
  return coats.map((task): Finding => ({
    level: 'warning',
    code: 'coat-longer-than-day',
    wall: task.wall,
    object: task.zone,
    text:
      `“${task.name}” in ${placeOf(job, task)} takes ${hours(task.work)}, more than a working day: a coat is laid in one go, ` +
      `so put more than ${crew} ${crew === 1 ? 'person' : 'people'} on it, or part the zone where a joint may show.`,
  }));
}

function placeOf(job: Job, { wall, zone }: DatedTask): string {
  const there = job.walls.find(({ id }) => id === wall);
  const named = there?.zones.find(({ id }) => id === zone);
  return named && there ? `${nameOfZone(named)} on ${nameOfWall(there)}` : 'the job';
}

function hours(minutes: number): string {
  return `${Math.round((minutes / hour) * 10) / 10} h`;
}
