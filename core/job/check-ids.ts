import type { Finding } from '../finding';
import { pathText, refusal, shown, type Path } from './place';
import type { Job } from './schema';
import { zoneListsOf } from './zone-lists';

/**
 * Ids name one thing each (stock sheets, rack pieces, walls, products,
 * build-ups, revisions and photos in the job; openings, fittings,
 * lines, fixing points, hung items and zones together in a wall, its pinned photos by themselves), can stand in a file's name, and make marks that no two panels share.
 */
export function checkIds(job: Job): Finding[] {
  const lists: Path[][] = [
    job.stock.map((_, i) => ['stock', i]),
    job.rack.map((_, i) => ['rack', i]),
    job.walls.map((_, i) => ['walls', i]),
    (job.quantities?.sundries ?? []).map((_, i) => ['quantities', 'sundries', i]),
    job.revisions.map((_, i) => ['revisions', i]),
    (job.photos ?? []).map((_, i) => ['photos', i]),
    (job.products ?? []).map((_, i) => ['products', i]),
    (job.buildUps ?? []).map((_, i) => ['buildUps', i]),
    (job.magnets ?? []).map((_, i) => ['magnets', i]),
    ...job.walls.map((wall, w) =>
      (wall.peopleBelow ?? []).map((_, i): Path => ['walls', w, 'peopleBelow', i]),
    ),
    ...job.walls.map((wall, w) => (wall.pins ?? []).map((_, i): Path => ['walls', w, 'pins', i])),
    (job.alternatives ?? []).map((_, i) => ['alternatives', i]),
    ...job.walls.map((wall, w) =>
      (['openings', 'fittings', 'lines', 'fixingPoints', 'zones', 'hung'] as const).flatMap((list) =>
        (wall[list] ?? []).map((_, i): Path => ['walls', w, list, i]),
      ),
    ),
  ];
  const others = zoneListsOf(job).filter(({ alternative }) => alternative !== null);
  const zonesOfOthers = others.map(({ zones, path }) => zones.map((_, i): Path => [...path, i]));
  const hungOfOthers = (job.alternatives ?? []).flatMap(({ hung = {} }, a) =>
    Object.entries(hung).map(([wallId, items]) =>
      items.map((_, i): Path => ['alternatives', a, 'hung', wallId, i]),
    ),
  );
  return [
    ...[...lists, ...zonesOfOthers, ...hungOfOthers].flatMap((places) =>
      places.flatMap((place) => checkCharacters(job, place)),
    ),
    ...[...lists, ...hungOfOthers].flatMap((places) => checkUnique(job, places)),
    ...others.flatMap(({ wall, wallIndex }, i) =>
      checkUnique(job, [
        ...(['openings', 'fittings', 'lines'] as const).flatMap((list) =>
          (wall[list] ?? []).map((_, at): Path => ['walls', wallIndex, list, at]),
        ),
        ...zonesOfOthers[i]!,
      ]).filter(({ text }) => text.startsWith('alternatives')),
    ),
    ...checkMarks(job),
  ];
}

function checkCharacters(job: Job, place: Path): Finding[] {
  const id = idAt(job, place);
  if (!/[\p{Cc}\p{Cs}\u202A-\u202E\u2066-\u2069/\\]/u.test(id) && id.trim() === id && !/^\.+$/.test(id))
    return [];
  const says = `is ${shown(id)}; an id becomes part of marks and file names, so use letters, digits, spaces inside, - and _.`;
  return [refusal(job, [...place, 'id'], 'unusable-id', says)];
}

function checkUnique(job: Job, places: readonly Path[]): Finding[] {
  const first = new Map<string, Path>();
  const findings: Finding[] = [];
  for (const place of places) {
    const id = idAt(job, place);
    const earlier = first.get(id);
    if (!earlier) {
      first.set(id, place);
      continue;
    }
    const says = `is ${shown(id)}, which ${pathText([...earlier, 'id'])} has already; give one of them another id.`;
    findings.push(refusal(job, [...place, 'id'], 'duplicate-id', says));
  }
  return findings;
}

/** Wall `A-B` with zone `C` and wall `A` with zone `B-C` would both mark their panels `A-B-C-01`. */
function checkMarks(job: Job): Finding[] {
  const first = new Map<string, { place: Path; wall: number }>();
  const findings: Finding[] = [];
  for (const { wall, wallIndex, alternative, zones, path } of zoneListsOf(job)) {
    zones.forEach((zone, z) => {
      if (!zone.layout) return;
      const mark = `${wall.id}-${zone.id}`;
      const key = JSON.stringify([alternative, mark]);
      const earlier = first.get(key);
      if (!earlier) {
        first.set(key, { place: [...path, z], wall: wallIndex });
      } else if (earlier.wall !== wallIndex) {
        const says = `would mark its panels ${shown(mark)} like ${pathText(earlier.place)}; give it another id.`;
        findings.push(refusal(job, [...path, z, 'id'], 'ambiguous-mark', says));
      }
    });
  }
  return findings;
}

function idAt(job: Job, place: Path): string {
  let value: unknown = job;
  for (const key of place) value = (value as Record<string | number, unknown>)[key];
  return (value as { id: string }).id;
}
