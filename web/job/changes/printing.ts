import { changeJob } from '../../../core/job/changes';
import type { Printing } from '../../../core/job/printing-schema';
import type { NamedChange } from './named-change';

/** The papers as they are to be; where nothing is said any more the job has none. */
export function setPrinting(printing: Printing, what: string): NamedChange {
  const given = Object.entries(printing).filter(([, of]) => Object.keys(of ?? {}).length > 0);
  return {
    name: `Set ${what}`,
    change: (job) =>
      changeJob(job, { printing: given.length > 0 ? (Object.fromEntries(given) as Printing) : undefined }),
  };
}
