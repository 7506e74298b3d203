import type { Finding } from '../finding';
import type { Job } from './schema';
import { cornerWarnings } from './warn-corners';
import { holeWarnings } from './warn-holes';
import { layoutWarnings } from './warn-layouts';
import { stockWarnings } from './warn-stock';

/**
 * What in a sound job wants a decision before anything is worked out: build-ups and layouts that disagree, stock
 * that does not suit, holes beside their zone. What collides on the wall is found where it is drawn: openings and
 * fittings off the wall by the survey, zones off the wall, on one another or across a fitting by the zones.
 */
export function jobWarnings(job: Job): Finding[] {
  return [
    ...job.walls.flatMap((wall) => [...holeWarnings(wall), ...layoutWarnings(job, wall)]),
    ...cornerWarnings(job),
    ...stockWarnings(job),
  ];
}
