import type { Job } from '../../core/job/schema';
import type { WorkedOut } from '../../core/run/worked-out';
import type { WorkReply, WorkRequest } from './protocol';

/** Steps of the cutting search for the plan that screen, documents and command line all show. */
export { defaultSteps } from '../../core/run/pipeline';

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
  #versionOfRequest = -1;

  constructor(worker: Worker) {
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<WorkReply>) => this.#receive(data);
    worker.onerror = (event) => (this.fault = event.message);
  }

  ask(job: Job, version: number, steps: number): void {
    this.#request++;
    this.#versionOfRequest = version;
    this.final = false;
    const request: WorkRequest = { request: this.#request, job, steps };
    this.#worker.postMessage(request);
  }

  #receive(reply: WorkReply): void {
    if (reply.request !== this.#request) return;
    if ('fault' in reply) {
      this.fault = reply.fault;
      return;
    }
    this.fault = null;
    this.worked = reply.worked;
    this.version = this.#versionOfRequest;
    this.final = reply.final;
  }
}
