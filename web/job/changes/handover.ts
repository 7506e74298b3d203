import { changeJob } from '../../../core/job/changes';
import type { Handover } from '../../../core/job/handover-schema';
import type { NamedChange } from './named-change';

/** What is recorded for the handover, as it is to be; one that says nothing is taken out of the job. */
export function setHandover(handover: Handover, what: string): NamedChange {
  const given = Object.entries(handover).filter(
    ([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0),
  );
  return {
    name: `Set ${what} of the handover`,
    change: (job) =>
      changeJob(job, {
        handover: given.length > 0 ? (Object.fromEntries(given) as Handover) : undefined,
      }),
  };
}
