import type { OpenJob } from '../job/open-job.svelte';
import type { Results } from '../results/results.svelte';

/** What stands in the way of issuing what is on the screen, in a sentence; null if nothing does. */
export function whyNotIssued(
  open: Pick<OpenJob, 'job' | 'version' | 'settled'>,
  { worked, version, final }: Pick<Results, 'worked' | 'version' | 'final'>,
): string | null {
  if (open.job.walls.length === 0) return 'There is nothing to issue yet: add a wall at Survey first.';
  if (!worked || version !== open.version || !final || !open.settled || worked.job !== open.job) {
    return 'The plan is still being worked out; it can be issued as soon as it has come to rest.';
  }
  const fault = worked.findings.find(({ level }) => level === 'error');
  return fault ? `This has to be mended before anything is issued: ${fault.text}` : null;
}
