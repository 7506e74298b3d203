import { addZone } from '../../../core/job/changes';
import { newZone } from '../../../core/job/defaults';
import { zoneShapesByOffset, type ZoneOffset } from '../../../core/job/zone-by-offset';
import { idsFor } from '../../../core/job/several';
import type { Job, Zone } from '../../../core/job/schema';
import { boxOfVertices, findObject, findWall, type ObjectRef } from '../../../core/job/shape';
import type { NamedChange } from './named-change';

export interface ZonesByOffset extends NamedChange {
  readonly zones: readonly Zone[];
  readonly refs: readonly ObjectRef[];
}

/**
 * Zones at a distance from an edge, one for each part that is left. A zone's own build-up and panels are taken over, but for
 * what was chosen by hand at its places; another edge gives what any new zone has.
 */
export function putInByOffset(
  job: Job,
  wallId: string,
  offset: ZoneOffset,
): ZonesByOffset | { readonly fault: string } {
  const wall = findWall(job, wallId);
  if (!wall) return { fault: 'There is no wall to put a zone on.' };
  const found = zoneShapesByOffset(wall, offset);
  if ('fault' in found) return found;
  const { of } = offset;
  const source = of?.kind === 'zone' ? (findObject(wall, of) as Zone | undefined) : undefined;
  const takeId = idsFor(wall);
  const zones = found.shapes.map(({ shape, holes }): Zone => {
    const { layout, ...plain } = newZone(job, wall, boxOfVertices(shape), source?.buildUp);
    const { byHand: _, ...own } = source?.layout ?? {};
    const laid = source ? (source.layout ? { layout: own as Zone['layout'] } : {}) : layout ? { layout } : {};
    return { ...plain, ...laid, id: takeId('Z'), shape, holes };
  });
  const ids = zones.map(({ id }) => id);
  return {
    name: `Put in ${ids.length === 1 ? `zone ${ids[0]}` : ids.length === 2 ? `zones ${ids.join(' and ')}` : `${ids.length} zones`}`,
    change: (start) => zones.reduce((next, zone) => addZone(next, wallId, zone), start),
    zones,
    refs: ids.map((id) => ({ kind: 'zone', id })),
  };
}
