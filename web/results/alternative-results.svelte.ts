import type { Job } from '../../core/job/schema';
import type { WorkedOut, WorkedWall } from '../../core/worked-out';
import { unpackWalls } from './changed-walls';
import type { WorkReply, WorkRequest } from './protocol';

/** What followed from a job that is not on the screen, as far as it has come. */
export interface OtherResult {
  readonly worked: WorkedOut | null;
  readonly final: boolean;
  /** A fault of ours, in words. */
  readonly fault: string | null;
}

const nothingYet: OtherResult = { worked: null, final: false, fault: null };

/** Results that nobody asks for any more are kept for a while: choosing and undoing come back to them. */
const mostKept = 24;

/**
 * Works out alternatives that are not on the walls, one after the other, in a worker of their own that starts with the
 * first question and never holds up the job on the screen. Results are kept by what the job says, so that an alternative
 * which did not change is not worked out again; nothing is stored.
 */
export class AlternativeResults {
  /** By what the job says; the newest last. */
  #known = $state.raw<readonly (readonly [key: string, result: OtherResult])[]>([]);

  readonly #steps: number;
  readonly #start: () => Worker;
  #worker: Worker | null = null;
  #wanted: readonly { readonly key: string; readonly job: Job }[] = [];
  #request = 0;
  #underWay: { readonly key: string; readonly job: Job } | null = null;
  #walls: readonly WorkedWall[] = [];

  constructor(start: () => Worker, steps: number) {
    this.#start = start;
    this.#steps = steps;
  }

  /** What is known of a job. */
  of(job: Job): OtherResult {
    return this.#find(keyOf(job)) ?? nothingYet;
  }

  /** These and no others, in this order; what is under way and no longer wanted is given up. */
  want(jobs: readonly Job[]): void {
    this.#wanted = jobs.map((job) => ({ key: keyOf(job), job }));
    if (this.#underWay && this.#wanted.some(({ key }) => key === this.#underWay!.key)) return;
    this.#next();
  }

  /** Nothing more will be asked. */
  end(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#wanted = [];
    this.#underWay = null;
  }

  #next(): void {
    const next = this.#wanted.find(({ key }) => {
      const known = this.#find(key);
      return !known?.final && !known?.fault;
    });
    this.#underWay = next ?? null;
    if (!next) return;
    this.#worker ??= this.#begin();
    this.#request++;
    const request: WorkRequest = { request: this.#request, job: next.job, steps: this.#steps };
    this.#worker.postMessage(request);
  }

  #begin(): Worker {
    const worker = this.#start();
    worker.onmessage = ({ data }: MessageEvent<WorkReply>) => this.#receive(data);
    worker.onerror = ({ message }) => {
      if (this.#underWay) this.#keep(this.#underWay.key, { ...nothingYet, fault: message });
      this.#next();
    };
    return worker;
  }

  #receive(reply: WorkReply): void {
    if ('walls' in reply) this.#walls = unpackWalls(reply.walls, this.#walls);
    if (reply.request !== this.#request || !this.#underWay) return;
    const { key, job } = this.#underWay;
    if ('fault' in reply) this.#keep(key, { ...nothingYet, fault: reply.fault });
    else {
      const worked = { ...reply.rest, job, walls: this.#walls };
      this.#keep(key, { worked, final: reply.final, fault: null });
      if (!reply.final) return;
    }
    this.#next();
  }

  #find(key: string): OtherResult | undefined {
    return this.#known.find(([known]) => known === key)?.[1];
  }

  #keep(key: string, result: OtherResult): void {
    const others = this.#known.filter(([known]) => known !== key);
    const isWanted = (known: string) => this.#wanted.some((wanted) => wanted.key === known);
    const surplus = others.length + 1 - mostKept;
    const dropped = others.filter(([known]) => !isWanted(known)).slice(0, Math.max(0, surplus));
    this.#known = [...others.filter((entry) => !dropped.includes(entry)), [key, result]];
  }
}

const keys = new WeakMap<Job, string>();

/** All that results depend on; of the revisions, whose panels lend their marks, the latest one's name. */
function keyOf(job: Job): string {
  let key = keys.get(job);
  if (key === undefined) {
    const { walls, stock, rack, cutting, temperatures, currency, revisions } = job;
    key = JSON.stringify([walls, stock, rack, cutting, temperatures, currency, revisions.at(-1)?.id]);
    keys.set(job, key);
  }
  return key;
}
