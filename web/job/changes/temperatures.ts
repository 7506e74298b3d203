import { changeJob } from '../../../core/job/changes';
import type { Temperatures } from '../../../core/job/schema';
import type { NamedChange } from './named-change';

/** What steel indoors comes to where nobody measured it, °C; common practice, no source. */
export const usualTemperatures: Temperatures = { low: 5, high: 40, atFixing: 18 };

/**
 * Temperatures of the steel replaced, the others as usual until someone says otherwise; the coldest is never above the
 * warmest.
 */
export function setTemperatures(patch: Partial<Temperatures>): NamedChange {
  return {
    name: 'Set temperatures of the steel',
    change: (job) => {
      const next = { ...(job.temperatures ?? usualTemperatures), ...patch };
      const temperatures = {
        ...next,
        low: Math.min(next.low, patch.high ?? next.low),
        high: Math.max(next.high, patch.low ?? next.high),
      };
      return changeJob(job, { temperatures });
    },
  };
}
