import { buildUpOf, type ResolvedLayer } from '../build-up/resolve';
import type { Finding } from '../finding';
import type { Product } from '../job/product-schema';
import type { Job } from '../job/schema';
import type { WorkedWall } from '../worked-out';
import { roundTheClock, type Minute } from './calendar';
import { climateFindings } from './climate-findings';
import type { Timing } from './critical-path';
import type { Draft, DraftLink, DraftTask, ProgrammeKind } from './draft';
import { dryingFindings } from './drying-findings';
import { programmeFindings } from './programme-findings';
import { settingsOf, type Settings, type Supply } from './settings';
import { shareCrew } from './share-crew';
import { visitsOf, type Visit } from './visits';
import { addZoneTasks } from './zone-tasks';

/** A task or event with its dates. Floats in working minutes. */
export interface DatedTask extends Timing {
  readonly id: string;
  readonly kind: ProgrammeKind;
  readonly name: string;
  /** The layer of the zone that is laid, from 0 at the wall, and which coat of it, from 1. */
  readonly uses?: DraftTask['uses'];
  /** Ids; undefined where it concerns the whole job. */
  readonly wall?: string;
  readonly zone?: string;
  /** Working minutes of the crew; 0 is an event. */
  readonly work: number;
}

/** Time in which something dries, hardens or cures; elapsed. */
export interface DatedWait {
  readonly kind: NonNullable<DraftLink['wait']>;
  /** Numbers of the tasks that it follows and that wait for it. */
  readonly after: number;
  readonly before: number;
  readonly start: Minute;
  readonly finish: Minute;
}

export interface Programme {
  readonly settings: Settings;
  /** By wall and zone, each in the order of its work; events and what concerns the whole job last. */
  readonly tasks: readonly DatedTask[];
  readonly waits: readonly DatedWait[];
  readonly visits: readonly Visit[];
  readonly supply: Supply;
  /** When all zones are; null: there is none of that kind. */
  readonly ready: { readonly magnets: Minute | null; readonly writing: Minute | null };
  /** null: there is nothing to do. */
  readonly handover: Minute | null;
  readonly findings: readonly Finding[];
}

/**
 * The dated plan of the work on a job: tasks follow from the layers of its zones and are done by one crew, zone after zone and
 * coat after coat; drying and curing run in elapsed hours, work in working hours.
 *
 * Days of a job that names none count from a first working day in `settings.dayOne`, a Monday; see `dayText`.
 *
 * @param walls as they were worked out from the job, in its order
 */
export function planProgramme(job: Job, walls: readonly WorkedWall[]): Programme {
  const settings = settingsOf(job);
  const { draft, layers } = draftOf(job, walls, settings);
  const { timings, missed } = shareCrew({ begin: settings.begin, tasks: draft.tasks, links: draft.links });
  const tasks = draft.tasks.map((task, i): DatedTask => dated(task, timings[i]!));
  const crewWork = tasks
    .flatMap(({ start, finish, work }, task) => (work > 0 ? [{ task, start, finish }] : []))
    .sort((a, b) => a.start - b.start);
  return {
    settings,
    tasks,
    waits: waitsOf(draft.links, tasks),
    visits: visitsOf(crewWork, settings.calendar, settings.visitGap),
    supply: settings.supply,
    ready: { magnets: lastOf(tasks, 'magnets'), writing: lastOf(tasks, 'writing') },
    handover: lastOf(tasks, 'handover'),
    findings: [
      ...climateFindings(productsIn(layers), settings),
      ...dryingFindings(layers),
      ...programmeFindings(job, tasks, [...missed], settings),
    ],
  };
}

function draftOf(
  job: Job,
  walls: readonly WorkedWall[],
  settings: Settings,
): { draft: Draft; layers: ResolvedLayer[] } {
  const draft: Draft = { tasks: [], links: [], calendar: settings.calendar };
  const all: ResolvedLayer[] = [];
  const ends: number[] = [];
  for (const { survey, zones } of walls) {
    for (const zone of zones) {
      const { layers } = buildUpOf(job, zone.area.zone, survey.wall.ground);
      all.push(...layers);
      ends.push(...addZoneTasks(draft, settings, survey.wall.id, zone, layers));
    }
  }
  if (ends.length > 0) addHandover(draft, settings, ends);
  return { draft, layers: all };
}

function productsIn(layers: readonly ResolvedLayer[]): Product[] {
  const products = layers.flatMap(({ product }) => (product ? [[product.id, product] as const] : []));
  return [...new Map(products).values()];
}

/** Inspection when all has cured, then what it finds is put right. */
function addHandover(draft: Draft, settings: Settings, ends: readonly number[]): void {
  const { tasks, links, calendar } = draft;
  let after = ends;
  const add = (task: Pick<DraftTask, 'id' | 'kind' | 'name' | 'work'>) => {
    const isEvent = task.work === 0;
    const number = tasks.push({ ...task, calendar: isEvent ? roundTheClock : calendar, crew: !isEvent }) - 1;
    links.push(...after.map((from): DraftLink => ({ from, to: number })));
    after = [number];
  };
  const { inspection, snags } = settings;
  if (inspection > 0) add({ id: 'inspection', kind: 'inspection', name: 'Inspection', work: inspection });
  if (snags > 0) add({ id: 'snags', kind: 'snags', name: 'Snags put right', work: snags });
  add({ id: 'handover', kind: 'handover', name: 'Handover', work: 0 });
}

function dated({ id, kind, name, uses, wall, zone, work }: DraftTask, timing: Timing): DatedTask {
  return {
    id,
    kind,
    name,
    ...(uses && { uses }),
    ...(wall !== undefined && { wall, zone }),
    work,
    ...timing,
  };
}

/** Every wait, but of those that end in one event only the one that it waits for longest. */
function waitsOf(links: readonly DraftLink[], tasks: readonly DatedTask[]): DatedWait[] {
  const waits: DatedWait[] = [];
  const longest = new Map<number, number>();
  for (const { from, to, lag = 0, wait } of links) {
    if (wait === undefined || lag === 0) continue;
    const start = tasks[from]!.finish;
    const dated: DatedWait = { kind: wait, after: from, before: to, start, finish: start + lag };
    const known = wait === 'cure' ? longest.get(to) : undefined;
    if (known === undefined) {
      if (wait === 'cure') longest.set(to, waits.length);
      waits.push(dated);
    } else if (dated.finish > waits[known]!.finish) waits[known] = dated;
  }
  return waits;
}

function lastOf(tasks: readonly DatedTask[], kind: ProgrammeKind): Minute | null {
  return tasks.reduce<Minute | null>(
    (last, task) => (task.kind === kind ? Math.max(last ?? -Infinity, task.finish) : last),
    null,
  );
}
