import { changeWall } from '../../../core/job/changes';
import {
  addFixingPoint,
  changeFixingPoint,
  changeGround,
  newFixingPoint,
  removeFixingPoint,
} from '../../../core/job/ground';
import type { FixingPoint, Ground } from '../../../core/job/ground-schema';
import { fixingPointNames } from '../../../core/job/names';
import type { Wall } from '../../../core/job/schema';
import type { MmPoint } from '../../../core/job/shape';
import type { NamedChange } from './named-change';
import { nameOfWall } from './names';

export function setGround(wallId: string, patch: Partial<Ground>): NamedChange {
  return {
    name: `Record the ground of ${nameOfWall(wallId)}`,
    change: (job) => changeGround(job, wallId, patch),
  };
}

/** Measured on site from now on, or not; by whom and when goes with it. */
export function setSurveyed(wallId: string, patch: Pick<Wall, 'surveyed' | 'surveyedBy' | 'surveyedOn'>) {
  return {
    name:
      patch.surveyed === false
        ? `Mark ${nameOfWall(wallId)} as not surveyed`
        : `Survey ${nameOfWall(wallId)}`,
    change: (job) =>
      changeWall(job, wallId, (wall) => {
        const entries = Object.entries({ ...wall, ...patch }).filter(([, value]) => value !== undefined);
        return Object.fromEntries(entries) as Wall;
      }),
  } satisfies NamedChange;
}

export function putInFixingPoint(wall: Wall, kind: FixingPoint['kind'], at?: MmPoint): NamedChange {
  const point = newFixingPoint(wall, kind, at);
  return {
    name: `Put in ${fixingPointNames[kind]} ${point.id}`,
    change: (job) => addFixingPoint(job, wall.id, point),
  };
}

export function setFixingPoint(
  wallId: string,
  { id, kind }: FixingPoint,
  patch: Partial<FixingPoint>,
): NamedChange {
  return {
    name: `Change ${fixingPointNames[kind]} ${id}`,
    change: (job) => changeFixingPoint(job, wallId, id, patch),
  };
}

export function takeOutFixingPoint(wallId: string, { id, kind }: FixingPoint): NamedChange {
  return {
    name: `Delete ${fixingPointNames[kind]} ${id}`,
    change: (job) => removeFixingPoint(job, wallId, id),
  };
}
