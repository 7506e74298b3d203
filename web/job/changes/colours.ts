import { changeObject, changeWall, withoutUndefined } from '../../../core/job/changes';
import type { FinishColour, Skirting } from '../../../core/job/colour-schema';
import type { NamedChange } from './named-change';
import { nameOfWall } from './names';

/** @param colour undefined: as such a finish usually is */
export function colourZone(wallId: string, zoneId: string, colour: FinishColour | undefined): NamedChange {
  return {
    name: `Set the colour of zone ${zoneId}`,
    change: (job) => changeObject(job, wallId, { kind: 'zone', id: zoneId }, { colour }),
  };
}

export function colourWall(wallId: string, colour: FinishColour | undefined): NamedChange {
  return {
    name: `Set the colour of ${nameOfWall(wallId)}`,
    change: (job) => changeWall(job, wallId, (wall) => withoutUndefined({ ...wall, colour })),
  };
}

/** @param skirting undefined: none */
export function setSkirting(wallId: string, skirting: Skirting | undefined): NamedChange {
  return {
    name: `${skirting ? 'Set' : 'Take out'} the skirting of ${nameOfWall(wallId)}`,
    change: (job) => changeWall(job, wallId, (wall) => withoutUndefined({ ...wall, skirting })),
  };
}
