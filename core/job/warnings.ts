import type { Finding } from '../finding';
import type { Job, Wall } from './schema';
import { layoutWarnings } from './warn-layouts';
import { stockWarnings } from './warn-stock';
import { zoneWarnings } from './warn-zones';
import { wallRegions } from './wall-regions';

/**
 * What in a sound job wants a decision: the job works out, but perhaps not as its user means it. What lies off
 * the wall among openings and fittings is found by the survey.
 *
 * Quick enough for every change: a wall that did not change is the same object and is not looked at again.
 */
export function jobWarnings(job: Job): Finding[] {
  return [
    ...job.walls.flatMap(rememberedZoneWarnings),
    ...job.walls.flatMap((wall) => layoutWarnings(job, wall)),
    ...stockWarnings(job),
  ];
}

const remembered = new WeakMap<Wall, readonly Finding[]>();

function rememberedZoneWarnings(wall: Wall): readonly Finding[] {
  let findings = remembered.get(wall);
  if (!findings) {
    findings = zoneWarnings(wallRegions(wall));
    remembered.set(wall, findings);
  }
  return findings;
}
