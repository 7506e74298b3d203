import { alternativesOf, jobOfAlternative } from '../../core/job/alternatives';
import type { DrawnBudget } from '../../core/drawings/budget-sheet';
import { readJobObject } from '../../core/job/read';
import type { Job } from '../../core/job/schema';
import { budgetJobOf } from '../../core/offer/budget-job';
import type { Finding } from '../../core/finding';
import type { OpenJob } from '../job/open-job.svelte';
import type { Keeping } from '../keeping/keeping.svelte';
import { sentence } from '../look/figures';
import type { Priced } from '../price/priced.svelte';
import { AlternativeResults } from '../results/alternative-results.svelte';
import { defaultSteps } from '../results/results.svelte';
import { startOtherWorker } from '../results/start-other-worker';
import { readBudget, type BudgetFieldName, type BudgetFields } from './read-budget';

type Made = { readonly job: Job } | { readonly fault: string; readonly field: BudgetFieldName };

/** At most so many jobs are looked through for rates. */
const mostLookedThrough = 20;

/**
 * A budget price while it is asked for: what stands in the fields, and each way to build up the wall as far as it is
 * worked out, in a worker of its own. The open job lends rates and products; it is never changed.
 */
export class BudgetDesk {
  fields = $state.raw<BudgetFields>({
    width: '',
    height: '',
    surface: 'writable',
    ways: ['steel-panel', 'magnetic-coating', 'magnetic-film'],
    material: '',
    exposure: '',
    access: false,
    start: '',
    client: '',
    name: '',
  });
  /** Whose rates, products and working hours count. */
  rates = $state.raw<Job>({} as Job);

  readonly #open: OpenJob;
  readonly #priced: Priced;
  readonly #results = new AlternativeResults(startOtherWorker, defaultSteps);
  readonly #date: string;

  /** One job with every way as an alternative, or what is wrong in the fields. */
  readonly made: Made = $derived.by(() => {
    const read = readBudget(this.fields, this.#date);
    if ('fault' in read) return read;
    const { units } = this.#open.job;
    const job = budgetJobOf({ ...this.rates, ...(units && { units }) }, read.request, read.buildUps);
    const refused = readJobObject(job).findings.find(({ level }) => level === 'error');
    return refused ? { field: 'width', fault: sentence(refused.text) } : { job };
  });

  readonly #jobs = $derived(
    'job' in this.made
      ? alternativesOf(this.made.job).map(({ id }) => jobOfAlternative((this.made as { job: Job }).job, id))
      : [],
  );

  /** Those that are worked out, in their order. */
  readonly budgets: readonly (DrawnBudget & { readonly findings: readonly Finding[] })[] = $derived(
    this.#jobs.flatMap((job, i) => {
      const { worked } = this.#results.of(job);
      const priced = worked && this.#priced.of(`budget ${i}`, worked, job);
      if (!priced) return [];
      const { inputs, offer } = priced;
      return [{ job, offer, inputs, walls: worked.walls, findings: [...offer.findings, ...worked.findings] }];
    }),
  );

  readonly waiting = $derived(
    this.#jobs.length -
      (this.budgets.length === this.#jobs.length
        ? this.#jobs.filter((job) => this.#results.of(job).final).length
        : this.budgets.length),
  );
  readonly broken = $derived(this.#jobs.map((job) => this.#results.of(job).fault).find(Boolean) ?? null);

  constructor(open: OpenJob, priced: Priced, date: string) {
    this.#open = open;
    this.#priced = priced;
    this.#date = date;
    this.rates = open.job;
    priced.load();
  }

  change(patch: Partial<BudgetFields>): void {
    this.fields = { ...this.fields, ...patch };
  }

  /** Asks for what the fields say now; call in an effect. */
  ask(): void {
    this.#results.want(this.#jobs);
  }

  end(): void {
    this.#results.end();
  }

  /** A job without rates prices nothing: then the last kept job that has some lends them. */
  async findRates(keeping: Keeping): Promise<void> {
    if (hasRates(this.rates)) return;
    const heads = await keeping.list.heads();
    for (const { id, isDeleted } of heads.slice(0, mostLookedThrough)) {
      const job = isDeleted ? null : await keeping.list.read(id);
      if (!job || !hasRates(job)) continue;
      this.rates = job;
      return;
    }
  }
}

function hasRates({ offer }: Job): boolean {
  return (offer?.labourRates?.length ?? 0) > 0;
}
