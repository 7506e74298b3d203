import type { PricedJob } from '../../core/offer/price-job';
import type { Job } from '../../core/job/schema';
import type { WorkedOut } from '../../core/worked-out';
import type { OpenJob } from '../job/open-job.svelte';
import type { Results } from '../results/results.svelte';

type PriceInSteps = (worked: WorkedOut) => Generator<undefined, PricedJob>;

/** ms of work between two looks at what the hand does. */
const sliceMs = 6;

/** What somebody looks at a price for: the job on the screen, an alternative, a budget. */
interface Asked {
  readonly place: string;
  readonly worked: WorkedOut;
  readonly job: Job;
  work: Generator<undefined, PricedJob> | null;
  /** Of this question, or the last answer to an earlier one. */
  priced: PricedJob | null;
}

/**
 * Quantities, programme and offer of jobs: of the walls as last worked out, with the products, rates and terms as they stand
 * this very moment. They are reckoned in slices between which the page listens; until a new answer stands the last one is
 * shown. The code for it is loaded when it is first asked for.
 */
export class Priced {
  readonly #open: OpenJob;
  readonly #results: Results;
  #asked: readonly Asked[] = [];
  #priceInSteps = $state.raw<PriceInSteps | null>(null);
  #answers = $state.raw(0);
  #isLoading = false;
  #isWorking = false;

  /** The job on the screen; null until it is worked out. */
  readonly job: PricedJob | null = $derived.by(() => {
    const { worked } = this.#results;
    return worked && this.of('screen', worked, this.#open.job);
  });

  constructor(open: OpenJob, results: Results) {
    this.#open = open;
    this.#results = results;
  }

  /**
   * Any worked-out job, with products, rates and terms of another; null until the first answer stands.
   *
   * @param place what the price is shown for; a newer question for the same place takes the place of an older one
   */
  of(place: string, worked: WorkedOut, job: Job): PricedJob | null {
    void this.#answers;
    const priceInSteps = this.#priceInSteps;
    if (!priceInSteps) return null;
    const known = this.#asked.find((one) => one.place === place);
    if (known && known.worked === worked && isSamePrice(known.job, job)) return known.priced;
    const work = priceInSteps({ ...worked, job: withPrices(worked.job, job) });
    // Of another job that was opened here the last answer says nothing.
    const isSameJob = known?.worked.job.name === worked.job.name;
    const asked: Asked = { place, worked, job, work, priced: isSameJob ? known.priced : null };
    this.#asked = [...this.#asked.filter((one) => one !== known), asked];
    if (!this.#isWorking) this.#goOn();
    return asked.priced;
  }

  load(): void {
    if (this.#isLoading) return;
    this.#isLoading = true;
    void import('../../core/offer/price-job').then(
      ({ priceJobInSteps }) => (this.#priceInSteps = priceJobInSteps),
    );
  }

  #goOn(): void {
    this.#isWorking = true;
    setTimeout(() => this.#work());
  }

  #work(): void {
    const end = performance.now() + sliceMs;
    this.#isWorking = false;
    let hasAnswer = false;
    for (const asked of this.#asked) {
      while (asked.work && performance.now() < end) {
        const { work } = asked;
        // Taken away first: what fails is not tried again and again.
        asked.work = null;
        const { value, done } = work.next();
        if (!done) asked.work = work;
        else {
          asked.priced = value;
          hasAnswer = true;
        }
      }
    }
    if (hasAnswer) this.#answers++;
    if (this.#asked.some(({ work }) => work)) this.#goOn();
  }
}

const priceFields = [
  'products',
  'buildUps',
  'quantities',
  'programme',
  'offer',
  'currency',
  'date',
] as const satisfies readonly (keyof Job)[];

function isSamePrice(a: Job, b: Job): boolean {
  return priceFields.every((field) => a[field] === b[field]);
}

/** Of one job what the walls are, of the other all that is only money, time and amounts. */
function withPrices(worked: Job, job: Job): Job {
  return { ...worked, ...Object.fromEntries(priceFields.map((field) => [field, job[field]])) };
}
