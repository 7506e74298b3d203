import { zoneNotices } from '../../core/drawings/client-view-zones';
import type { WorkedOut, WorkedWall } from '../../core/worked-out';

/** Walls that a client is shown: those with a zone that has an area. */
export function clientWalls({ walls }: WorkedOut): WorkedWall[] {
  return walls.filter(({ zones }) => zoneNotices(zones.map(({ area }) => area)).length > 0);
}
