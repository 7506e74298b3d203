import type { Job } from '../../../core/job/schema';
import type { OpenJob } from '../open-job.svelte';

/** A change of a job under the name that the user reads after "Undo". */
export interface NamedChange {
  readonly name: string;
  readonly change: (job: Job) => Job;
}

/**
 * Makes the change on the open job; `merge` joins it to the last one of the same name.
 *
 * @returns why it was refused, in a sentence, or null
 */
export function make(
  open: OpenJob,
  { name, change }: NamedChange,
  options?: { merge?: boolean },
): string | null {
  return open.apply(name, change, options);
}
