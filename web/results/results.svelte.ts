import type { Job } from '../../core/job/schema';
import type { WorkedOut, WorkedWall } from '../../core/worked-out';
import { unpackWalls } from './changed-walls';
import type { WorkReply, WorkRequest } from './protocol';

/** Steps of the cutting search for the plan that screen, documents and command line all show. */
export { defaultSteps } from '../../core/run/steps';

/**
 * What follows from the job on the screen. `worked` is the newest result there is (of an older version while
 * the worker is busy: `version` says which); it is replaced whole, never changed in place.
 */
export class Results {
  worked = $state.raw<WorkedOut | null>(null);
  /** Version of the open job that `worked` belongs to. */
  version = $state.raw(-1);
  final = $state.raw(false);
  /** A fault of ours in working out the job, in words; the last good result stays. */
  fault = $state.raw<string | null>(null);

  readonly #worker: Worker;
  #request = 0;
  #asked: { readonly job: Job; readonly version: number } | null = null;
  #walls: readonly WorkedWall[] = [];

  constructor(worker: Worker) {
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<WorkReply>) => this.#receive(data);
    worker.onerror = (event) => (this.fault = event.message);
  }

  /** A newer question supersedes the older. */
  ask(job: Job, version: number, steps: number): void {
    this.#request++;
    this.#asked = { job, version };
    this.final = false;
    const request: WorkRequest = { request: this.#request, job, steps };
    this.#worker.postMessage(request);
  }

  #receive(reply: WorkReply): void {
    // What is kept of the walls goes on even from replies that come too late.
    if ('walls' in reply) this.#walls = unpackWalls(reply.walls, this.#walls);
    if (reply.request !== this.#request || !this.#asked) return;
    if ('fault' in reply) {
      this.fault = reply.fault;
      return;
    }
    const { job, version } = this.#asked;
    this.fault = null;
    this.worked = { ...reply.rest, job, walls: this.#walls };
    this.version = version;
    this.final = reply.final;
  }
}
