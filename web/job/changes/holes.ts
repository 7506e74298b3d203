import { addHole, fittedHole, movedHole, removeHole, setHole, type HoleRef } from '../../../core/job/holes';
import type { Job, Vertex } from '../../../core/job/schema';
import { boxOfVertices, findWall, type MmBox } from '../../../core/job/shape';
import type { NamedChange } from './named-change';

export function putInHole(wallId: string, zoneId: string, hole: readonly Vertex[]): NamedChange {
  return {
    name: `Put a hole into zone ${zoneId}`,
    change: (job) => addHole(job, wallId, zoneId, hole),
  };
}

export function takeOutHole(wallId: string, ref: HoleRef): NamedChange {
  return { name: `Take ${nameOfHole(ref)} out`, change: (job) => removeHole(job, wallId, ref) };
}

export function moveHole(wallId: string, ref: HoleRef, dx: number, dy: number): NamedChange {
  return {
    name: `Move ${nameOfHole(ref)}`,
    change: (job) => {
      const hole = findHole(job, wallId, ref);
      return hole && (dx !== 0 || dy !== 0) ? setHole(job, wallId, ref, movedHole(hole, dx, dy)) : job;
    },
  };
}

/** Some sides of its box typed, or all pulled; the others stay. */
export function setHoleBox(wallId: string, ref: HoleRef, patch: Partial<MmBox>): NamedChange {
  return {
    name: `${'width' in patch || 'height' in patch ? 'Resize' : 'Move'} ${nameOfHole(ref)}`,
    change: (job) => {
      const hole = findHole(job, wallId, ref);
      return hole ? setHole(job, wallId, ref, fittedHole(hole, { ...boxOfVertices(hole), ...patch })) : job;
    },
  };
}

/** "hole 1 of zone Z1" */
export function nameOfHole({ zone, hole }: HoleRef): string {
  return `hole ${hole + 1} of zone ${zone}`;
}

function findHole(job: Job, wallId: string, { zone, hole }: HoleRef): readonly Vertex[] | undefined {
  return findWall(job, wallId)?.zones.find(({ id }) => id === zone)?.holes[hole];
}
