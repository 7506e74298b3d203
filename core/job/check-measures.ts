import { changeWall } from './changes';
import type { CheckMeasure, Job, Wall } from './schema';

/** Measures of a wall replaced; none at all leaves no trace in the file. */
export function setCheckMeasures(
  job: Job,
  wallId: string,
  change: (measures: readonly CheckMeasure[]) => readonly CheckMeasure[],
): Job {
  return changeWall(job, wallId, (wall) => {
    const { checkMeasures: before = [], ...rest } = wall;
    const checkMeasures = [...change(before)];
    return (checkMeasures.length > 0 ? { ...rest, checkMeasures } : rest) as Wall;
  });
}
