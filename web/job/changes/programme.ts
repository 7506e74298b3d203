import { changeJob } from '../../../core/job/changes';
import type { ProgrammeSettings } from '../../../core/job/programme-schema';
import type { NamedChange } from './named-change';

/** How the work is planned; settings that say nothing are taken out of the job. */
export function setProgramme(programme: ProgrammeSettings, what: string): NamedChange {
  return {
    name: `Set ${what} of the programme`,
    change: (job) => changeJob(job, { programme: Object.keys(programme).length > 0 ? programme : undefined }),
  };
}
