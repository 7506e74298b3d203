import type { PricedJob } from '../../core/offer/price-job';
import type { Job } from '../../core/job/schema';
import type { WorkedOut } from '../../core/worked-out';
import type { OpenJob } from '../job/open-job.svelte';
import type { Results } from '../results/results.svelte';

type PriceJob = (worked: WorkedOut) => PricedJob;

/**
 * Quantities, programme and offer of the job on the screen: of the walls as last worked out, with the products, rates and
 * terms as they stand this very moment. Its code is loaded when it is first asked for.
 */
export class Priced {
  readonly #open: OpenJob;
  readonly #results: Results;
  #priceJob = $state.raw<PriceJob | null>(null);
  #isLoading = false;

  /** null until the job is worked out. */
  readonly job: PricedJob | null = $derived.by(() => {
    const { worked } = this.#results;
    return worked && this.of(worked, this.#open.job);
  });

  constructor(open: OpenJob, results: Results) {
    this.#open = open;
    this.#results = results;
  }

  /** Of any worked-out job, with products, rates and terms of another; null until the code is here. */
  of(worked: WorkedOut, job: Job): PricedJob | null {
    return this.#priceJob && this.#priceJob({ ...worked, job: withPrices(worked.job, job) });
  }

  load(): void {
    if (this.#isLoading) return;
    this.#isLoading = true;
    void import('../../core/offer/price-job').then(({ priceJob }) => (this.#priceJob = priceJob));
  }
}

/** Of one job what the walls are, of the other all that is only money, time and amounts. */
function withPrices(
  worked: Job,
  { products, buildUps, quantities, programme, offer, currency, date }: Job,
): Job {
  return { ...worked, products, buildUps, quantities, programme, offer, currency, date } as Job;
}
