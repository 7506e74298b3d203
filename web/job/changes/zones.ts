import { changeObject, reorderZone } from '../../../core/job/changes';
import { buildUpKind } from '../../../core/job/build-up-kinds';
import { defaultLayout } from '../../../core/job/defaults';
import type { Layout, Zone } from '../../../core/job/schema';
import { findWall } from '../../../core/job/shape';
import type { NamedChange } from './named-change';

export function renameZone(wallId: string, zoneId: string, name: string): NamedChange {
  return patchZone(wallId, zoneId, `Rename zone ${zoneId}`, { name });
}

/**
 * Another build-up. A zone that becomes steel gets a layout on the job's first stock sheet if it has none; one
 * that is no longer steel loses it, since only a zone with a layout has panels.
 */
export function setBuildUp(wallId: string, zoneId: string, buildUp: string): NamedChange {
  return {
    name: `Set build-up of zone ${zoneId}`,
    change: (job) => {
      const zone = findZone(findWall(job, wallId)?.zones, zoneId);
      if (!zone || zone.buildUp === buildUp) return job;
      const steel = buildUpKind(buildUp).magnetic === 'steel';
      const layout = steel ? (zone.layout ?? defaultLayout(job)) : undefined;
      return changeObject<Zone>(
        job,
        wallId,
        { kind: 'zone', id: zoneId },
        { buildUp, layout, layers: undefined },
      );
    },
  };
}

/** Up (−1) or down (+1) in the list; where two zones overlap, the one listed first has the area. */
export function moveZoneInList(wallId: string, zoneId: string, by: -1 | 1): NamedChange {
  return {
    name: `List zone ${zoneId} ${by < 0 ? 'earlier' : 'later'}`,
    change: (job) => reorderZone(job, wallId, zoneId, by),
  };
}

const layoutWords: Readonly<Record<string, string>> = {
  stock: 'stock sheet',
  start: 'start',
  turned: 'direction',
  jointGap: 'joint gap',
  stagger: 'stagger',
  leastWidth: 'least width',
  leastArea: 'least area',
  clearOfCorners: 'distance from corners',
  clearOfBoardJoints: 'distance from board joints',
  stocks: 'mixed formats',
  cutFrom: 'stock for cut panels',
  startEachPart: 'starts of parts',
  redivide: 'slivers',
};

/** Fields of a layout replaced; a field set to undefined is taken out. */
export function setLayout(wallId: string, zoneId: string, patch: Partial<Layout>): NamedChange {
  const [field = ''] = Object.keys(patch);
  return {
    name: `Set ${layoutWords[field] ?? 'layout'} of zone ${zoneId}`,
    change: (job) => {
      const zone = findZone(findWall(job, wallId)?.zones, zoneId);
      if (!zone) return job;
      const layout = withoutUndefined({ ...(zone.layout ?? defaultLayout(job)), ...patch } as Layout);
      return changeObject<Zone>(job, wallId, { kind: 'zone', id: zoneId }, { layout });
    },
  };
}

function patchZone(wallId: string, zoneId: string, name: string, patch: Partial<Zone>): NamedChange {
  return { name, change: (job) => changeObject<Zone>(job, wallId, { kind: 'zone', id: zoneId }, patch) };
}

function findZone(zones: readonly Zone[] | undefined, id: string): Zone | undefined {
  return zones?.find((zone) => zone.id === id);
}

function withoutUndefined<T extends object>(object: T): T {
  return Object.fromEntries(Object.entries(object).filter(([, value]) => value !== undefined)) as T;
}
