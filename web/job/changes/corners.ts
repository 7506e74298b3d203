import { changeWall } from '../../../core/job/changes';
import { changeRunsOn, partAtCorner, runRoundCorner, type RunSide } from '../../../core/job/run-round-corner';
import type { Corner, RunsOn, Wall } from '../../../core/job/schema';
import type { NamedChange } from './named-change';
import { nameOfWall } from './names';

/** The right end of a wall meets another wall's left end; undefined: it meets none. */
export function setCornerOf(wallId: string, corner: Corner | undefined): NamedChange {
  return {
    name: corner
      ? `Set corner of walls ${wallId} and ${corner.to}`
      : `Take out corner of ${nameOfWall(wallId)}`,
    change: (job) =>
      changeWall(job, wallId, (wall) => {
        const { corner: _, ...rest } = wall;
        return (corner ? { ...rest, corner: tidyCorner(corner) } : rest) as Wall;
      }),
  };
}

/** A zone led round the corner at one end of its wall; `length` along the next wall, or all of it. */
export function leadRoundCorner(wallId: string, zoneId: string, side: RunSide, length?: number): NamedChange {
  return {
    name: `Run zone ${zoneId} round the corner`,
    change: (job) => {
      const result = runRoundCorner(job, wallId, zoneId, side, length);
      return 'job' in result ? result.job : job;
    },
  };
}

export function setRunsOn(
  wallId: string,
  zoneId: string,
  patch: Partial<Pick<RunsOn, 'lines' | 'skip'>>,
): NamedChange {
  return {
    name: `Set lines of zone ${zoneId} at the corner`,
    change: (job) => changeRunsOn(job, wallId, zoneId, patch),
  };
}

export function partZoneAtCorner(wallId: string, zoneId: string): NamedChange {
  return {
    name: `Part zone ${zoneId} at the corner`,
    change: (job) => partAtCorner(job, wallId, zoneId),
  };
}

/** What is as usual need not be written. */
function tidyCorner({ angle, rise, ...corner }: Corner): Corner {
  return {
    ...corner,
    ...(angle !== undefined && angle !== 90 && { angle }),
    ...(rise && { rise }),
  };
}
