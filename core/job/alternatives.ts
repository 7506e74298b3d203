import type { Alternative, ChosenAlternative, Job, Wall, Zone } from './schema';

/*
 * Alternatives of a job: one survey, several sets of zones with their build-ups and layouts. Those of the chosen one
 * stand on the walls, the others wait in `alternatives`. An id that names nothing leaves the job as it was.
 */

/** An alternative as it is listed; the chosen one is one of them. */
export interface ListedAlternative {
  readonly id: string;
  /** As it was named, or `Alternative 2` by its place in the list. */
  readonly title: string;
  readonly isChosen: boolean;
}

export function hasAlternatives({ alternatives = [] }: Job): boolean {
  return alternatives.length > 0;
}

/** All alternatives in their order; a job without any has the one on its walls. */
export function alternativesOf(job: Job): ListedAlternative[] {
  const chosen = chosenOf(job);
  const others = (job.alternatives ?? []).map(({ id, name }) => ({ id, name, isChosen: false }));
  const listed = others.toSpliced(placeOf(job), 0, { id: chosen.id, name: chosen.name, isChosen: true });
  return listed.map(({ id, name, isChosen }, i) => ({ id, title: name || `Alternative ${i + 1}`, isChosen }));
}

/** What the alternative on the walls is called; null while the job has no other. */
export function chosenTitle(job: Job): string | null {
  return hasAlternatives(job) ? (alternativesOf(job).find(({ isChosen }) => isChosen)?.title ?? null) : null;
}

/** The zones of another alternative come onto the walls, those on them go into its place. Nothing else changes place. */
export function chooseAlternative(job: Job, id: string): Job {
  const others = job.alternatives ?? [];
  const next = others.find((alternative) => alternative.id === id);
  if (!next) return job;
  const place = placeOf(job);
  const { zones, hung, ...name } = next;
  const { place: _, ...before } = chosenOf(job);
  const stored = { ...before, ...onWalls(job) } as Alternative;
  const listed = others.toSpliced(place, 0, stored);
  const at = listed.indexOf(next);
  return {
    ...job,
    walls: withoutLooseRuns(
      job.walls.map((wall) => withHung(withZones(wall, zonesOf({ zones }, wall.id)), hung)),
    ),
    chosenAlternative: { ...name, place: at } as ChosenAlternative,
    alternatives: listed.toSpliced(at, 1),
  };
}

/** The job as it is with one alternative chosen and no other beside it: what is worked out of it. */
export function jobOfAlternative(job: Job, id: string): Job {
  const { alternatives: _, ...alone } = chooseAlternative(job, id);
  return alone as Job;
}

/** A copy of an alternative, under a fresh id, listed right after it and not chosen. */
export function copyAlternative(job: Job, id: string, name: string): Job {
  const chosen = chosenOf(job);
  const source =
    id === chosen.id
      ? ({ ...chosen, ...onWalls(job) } as Alternative & { place?: number })
      : job.alternatives?.find((alternative) => alternative.id === id);
  if (!source) return job;
  const { place: _, ...fields } = source as Alternative & { place?: number };
  return putIn(job, { ...fields, id: freshAlternativeId(job), name } as Alternative, id);
}

/** An alternative without zones, listed last and not chosen. */
export function addEmptyAlternative(job: Job, name: string): Job {
  return putIn(job, { id: freshAlternativeId(job), name, zones: {} } as Alternative, null);
}

export function renameAlternative(job: Job, id: string, name: string): Job {
  const chosen = chosenOf(job);
  if (id === chosen.id) {
    return chosen.name === name ? job : { ...job, chosenAlternative: { ...chosen, name } };
  }
  const others = job.alternatives ?? [];
  if (!others.some((other) => other.id === id && other.name !== name)) return job;
  return { ...job, alternatives: others.map((other) => (other.id === id ? { ...other, name } : other)) };
}

/** The chosen one stays: another has to be chosen first. */
export function removeAlternative(job: Job, id: string): Job {
  const others = job.alternatives ?? [];
  const at = others.findIndex((other) => other.id === id);
  if (at < 0) return job;
  const chosen = chosenOf(job);
  const place = placeOf(job);
  const left = { ...job, chosenAlternative: { ...chosen, place: at < place ? place - 1 : place } };
  if (others.length > 1) return { ...left, alternatives: others.toSpliced(at, 1) };
  const { alternatives: _, ...alone } = left;
  return alone as Job;
}

/** An earlier (−1) or later (+1) place in the list. */
export function reorderAlternative(job: Job, id: string, by: -1 | 1): Job {
  const listed = alternativesOf(job).map((entry) => entry.id);
  const from = listed.indexOf(id);
  const to = from + by;
  if (from < 0 || to < 0 || to >= listed.length) return job;
  listed.splice(to, 0, ...listed.splice(from, 1));
  const chosen = chosenOf(job);
  const others = listed.flatMap((entry) => job.alternatives?.find((other) => other.id === entry) ?? []);
  return {
    ...job,
    chosenAlternative: { ...chosen, place: listed.indexOf(chosen.id) },
    alternatives: others,
  };
}

/** What stands by the id of its wall in every alternative but the chosen one, changed. */
export function mapOtherLists(
  job: Job,
  change: <T>(lists: Readonly<Record<string, T[]>>) => Readonly<Record<string, T[]>>,
): Job {
  const { alternatives } = job;
  if (!alternatives) return job;
  const next = alternatives.map((alternative) => {
    const zones = change(alternative.zones);
    const hung = alternative.hung && change(alternative.hung);
    if (zones === alternative.zones && hung === alternative.hung) return alternative;
    return { ...alternative, zones, ...(hung && { hung }) } as Alternative;
  });
  return next.some((alternative, i) => alternative !== alternatives[i])
    ? { ...job, alternatives: next }
    : job;
}

/** V1, V2, …: the first that no alternative has. */
export function freshAlternativeId(job: Job): string {
  return freshId([chosenOf(job).id, ...(job.alternatives ?? []).map(({ id }) => id)]);
}

/** A job from another program may not say what its chosen alternative is called. */
function chosenOf({ chosenAlternative, alternatives = [] }: Job): ChosenAlternative {
  return (
    chosenAlternative ?? ({ id: freshId(alternatives.map(({ id }) => id)), name: '' } as ChosenAlternative)
  );
}

function freshId(taken: readonly string[]): string {
  for (let n = 1; ; n++) if (!taken.includes(`V${n}`)) return `V${n}`;
}

function placeOf({ chosenAlternative, alternatives = [] }: Job): number {
  return Math.min(chosenAlternative?.place ?? 0, alternatives.length);
}

/** @param after the alternative that it is listed after; null: last */
function putIn(job: Job, alternative: Alternative, after: string | null): Job {
  const others = job.alternatives ?? [];
  const chosen = chosenOf(job);
  const place = placeOf(job);
  const all = others.toSpliced(place, 0, { ...chosen, zones: {} } as Alternative);
  const index = after === null ? all.length : all.findIndex(({ id }) => id === after) + 1;
  const beforeChosen = index <= place;
  return {
    ...job,
    chosenAlternative: { ...chosen, place: beforeChosen ? place + 1 : place },
    alternatives: others.toSpliced(beforeChosen ? index : index - 1, 0, alternative),
  };
}

function onWalls({ walls }: Job): Pick<Alternative, 'zones' | 'hung'> {
  const hung = walls.filter((wall) => (wall.hung ?? []).length > 0);
  return {
    zones: Object.fromEntries(walls.map(({ id, zones }) => [id, zones])),
    ...(hung.length > 0 && { hung: Object.fromEntries(hung.map((wall) => [wall.id, wall.hung!])) }),
  };
}

function withHung(wall: Wall, hung: Alternative['hung'] = {}): Wall {
  const next = Object.hasOwn(hung, wall.id) ? hung[wall.id]! : [];
  if (next === wall.hung || (next.length === 0 && (wall.hung ?? []).length === 0)) return wall;
  const { hung: _, ...rest } = wall;
  return (next.length > 0 ? { ...rest, hung: next } : rest) as Wall;
}

function zonesOf({ zones }: Pick<Alternative, 'zones'>, wallId: string): Zone[] {
  return (Object.hasOwn(zones, wallId) ? zones[wallId] : undefined) ?? [];
}

/** A wall whose zones are the same stays the same object, so that nothing of it is worked out anew. */
function withZones(wall: Wall, zones: Zone[]): Wall {
  return zones === wall.zones || (zones.length === 0 && wall.zones.length === 0) ? wall : { ...wall, zones };
}

/**
 * Zones that ran on round a corner which has gone, or to a zone that has, end at their wall: the survey may have changed
 * while they were not on it.
 */
function withoutLooseRuns(walls: Wall[]): Wall[] {
  const leads = (wall: Wall, { runsOn }: Zone) =>
    !runsOn ||
    (wall.corner?.to === runsOn.wall &&
      walls.some(({ id, zones }) => id === runsOn.wall && zones.some((zone) => zone.id === runsOn.zone)));
  return walls.map((wall) => {
    if (wall.zones.every((zone) => leads(wall, zone))) return wall;
    const zones = wall.zones.map((zone) => {
      if (leads(wall, zone)) return zone;
      const { runsOn: _, ...alone } = zone;
      return alone as Zone;
    });
    return { ...wall, zones };
  });
}
