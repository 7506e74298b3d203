import { changeJob } from '../../../core/job/changes';
import type { QuantitiesSettings } from '../../../core/job/quantities-schema';
import type { NamedChange } from './named-change';

/** What quantities are counted by; settings that say nothing are taken out of the job. */
export function setQuantities(quantities: QuantitiesSettings, what: string): NamedChange {
  const { sundries, ...rest } = quantities;
  const next = sundries && sundries.length > 0 ? { ...rest, sundries } : rest;
  return {
    name: `Set ${what} of the quantities`,
    change: (job) => changeJob(job, { quantities: Object.keys(next).length > 0 ? next : undefined }),
  };
}
