import { changeObject } from '../job/changes';
import type { BuildUp, Layer } from '../job/product-schema';
import type { Job, Wall, Zone } from '../job/schema';
import { findWall } from '../job/shape';
import { zoneListsOf } from '../job/zone-lists';
import { nextPart, partBefore } from '../job/zone-runs';
import { buildUpOf } from './resolve';

/**
 * A zone's layers replaced, in a build-up of the job's own: the one that the zone names if no other zone does but its parts
 * round corners (also none of another alternative), else a new one, so that no other zone changes. The job as it was where there is no such zone
 * or nothing changes.
 */
export function changeLayers(
  job: Job,
  wallId: string,
  zoneId: string,
  change: (layers: readonly Layer[]) => readonly Layer[],
): Job {
  const wall = findWall(job, wallId);
  const zone = wall?.zones.find(({ id }) => id === zoneId);
  if (!wall || !zone) return job;
  const before = buildUpOf(job, zone, wall.ground).layers.map(({ layer }) => layer);
  const layers = [...change(before)];
  if (JSON.stringify(layers) === JSON.stringify(before)) return job;
  const own = job.buildUps?.find(({ id }) => id === zone.layers);
  if (own && usersOf(job, own.id).length === partsAlike(job, wall, zone)) {
    return { ...job, buildUps: job.buildUps!.map((one) => (one === own ? { ...own, layers } : one)) };
  }
  const id = freshBuildUpId(job);
  const made: BuildUp = { id, name: own?.name ?? '', kind: zone.buildUp, layers };
  const grown = { ...job, buildUps: [...(job.buildUps ?? []), made] };
  return changeObject<Zone>(grown, wallId, { kind: 'zone', id: zoneId }, { layers: id });
}

/** How many parts of a zone, wall after wall round the corners, have the same layers of the job's own: they stay in step. */
function partsAlike(job: Job, wall: Wall, zone: Zone): number {
  const seen = new Set<Zone>([zone]);
  for (const next of [nextPart, before]) {
    for (let part = next(job, wall, zone); part; part = next(job, part.wall, part.zone)) {
      if (part.zone.layers !== zone.layers || seen.has(part.zone)) break;
      seen.add(part.zone);
    }
  }
  return seen.size;
}

const before: typeof nextPart = (job, wall, { id }) => partBefore(job, wall.id, id);

/** `B1`, or the next that is free. */
export function freshBuildUpId({ buildUps = [] }: Job): string {
  for (let n = 1; ; n++) {
    if (!buildUps.some(({ id }) => id === `B${n}`)) return `B${n}`;
  }
}

/** Ids of the zones, of all alternatives, that name the build-up. */
export function usersOf(job: Job, buildUpId: string): readonly string[] {
  return zoneListsOf(job).flatMap(({ zones }) =>
    zones.filter(({ layers }) => layers === buildUpId).map(({ id }) => id),
  );
}
