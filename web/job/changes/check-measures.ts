import { changeWall } from '../../../core/job/changes';
import { setCheckMeasures } from '../../../core/job/check-measures';
import type { CheckMeasure, Vertex } from '../../../core/job/schema';
import type { NamedChange } from './named-change';
import { nameOfWall } from './names';

export function putInMeasure(wallId: string, measure: CheckMeasure): NamedChange {
  return {
    name: `Put in check measure ${measure.from} to ${measure.to}`,
    change: (job) => setCheckMeasures(job, wallId, (measures) => [...measures, measure]),
  };
}

/** @param index among the wall's measures */
export function setMeasure(wallId: string, index: number, patch: Partial<CheckMeasure>): NamedChange {
  return {
    name: `Change a check measure of ${nameOfWall(wallId)}`,
    change: (job) =>
      setCheckMeasures(job, wallId, (measures) =>
        measures.map((measure, i) => (i === index ? { ...measure, ...patch } : measure)),
      ),
  };
}

export function takeOutMeasure(wallId: string, index: number): NamedChange {
  return {
    name: `Delete a check measure of ${nameOfWall(wallId)}`,
    change: (job) => setCheckMeasures(job, wallId, (measures) => measures.filter((_, i) => i !== index)),
  };
}

export function takeFittedOutline(wallId: string, outline: readonly Vertex[]): NamedChange {
  return {
    name: `Fit the outline of ${nameOfWall(wallId)} to its measures`,
    change: (job) => changeWall(job, wallId, (wall) => ({ ...wall, outline: [...outline] })),
  };
}
