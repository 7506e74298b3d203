import { alternativesOf, jobOfAlternative, type ListedAlternative } from '../../core/job/alternatives';
import type { Job } from '../../core/job/schema';
import type { OpenJob } from '../job/open-job.svelte';
import type { AlternativeResults, OtherResult } from '../results/alternative-results.svelte';
import type { Results } from '../results/results.svelte';

/** An alternative with what follows from it, as far as that is known. */
export interface WorkedAlternative extends ListedAlternative {
  /** The job with its zones on the walls. */
  readonly job: Job;
  readonly result: OtherResult;
}

/**
 * All alternatives of the open job with their results, those on the walls from the screen and the others asked for in the
 * background while `wanted` holds. Call while a component starts.
 */
export function followAlternatives(
  open: OpenJob,
  results: Results,
  others: AlternativeResults,
  wanted: (id: string) => boolean = () => true,
): { readonly all: readonly WorkedAlternative[] } {
  const jobs = $derived(
    alternativesOf(open.job).map((alternative) => ({
      ...alternative,
      job: alternative.isChosen ? open.job : jobOfAlternative(open.job, alternative.id),
    })),
  );
  const all = $derived(
    jobs.map((alternative) => ({
      ...alternative,
      result: alternative.isChosen ? onScreen(open, results) : others.of(alternative.job),
    })),
  );

  /** A hand that drags asks no questions; what is on the screen goes first. */
  $effect(() => {
    if (!open.settled || !results.final) return;
    others.want(jobs.filter(({ id, isChosen }) => !isChosen && wanted(id)).map(({ job }) => job));
  });
  $effect(() => () => others.want([]));

  return {
    get all() {
      return all;
    },
  };
}

function onScreen(open: OpenJob, { worked, version, final, fault }: Results): OtherResult {
  return { worked, final: final && version === open.version, fault };
}
