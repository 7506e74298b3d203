import { growZone, type ZoneGrowth } from '../../../core/job/zone-edges';
import type { NamedChange } from './named-change';

/** A zone made wider, higher or smaller by moving its edges outwards by so much, or inwards. */
export function resizeZone(wallId: string, zoneId: string, growth: ZoneGrowth): NamedChange {
  return {
    name: `Change size of zone ${zoneId}`,
    change: (job) => growZone(job, wallId, zoneId, growth),
  };
}
