import { changeJob } from '../../../core/job/changes';
import type { QuantitiesSettings } from '../../../core/job/quantities-schema';
import type { NamedChange } from './named-change';

/** What quantities are counted by; settings that say nothing are taken out of the job. */
export function setQuantities(quantities: QuantitiesSettings, what: string): NamedChange {
  const { sundries, pieces, ...rest } = quantities;
  const next = {
    ...rest,
    ...(pieces && pieces.length > 0 && { pieces }),
    ...(sundries && sundries.length > 0 && { sundries }),
  };
  return {
    name: `Set ${what} of the quantities`,
    change: (job) => changeJob(job, { quantities: Object.keys(next).length > 0 ? next : undefined }),
  };
}
