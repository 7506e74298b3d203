import type { HandChoice, Job } from '../../core/job/schema';
import type { HandFigures } from '../../core/run/hand-figures';
import type { HandReply, HandRequest } from './hand-protocol';
import { handWeigher } from './hand-weigher';
import { NewestOnly } from './newest-only';

/** What a zone comes to with a choice by hand and without it, from a worker of its own. */
export class HandWatch {
  figures = $state.raw<HandFigures | null>(null);
  /** What the zone comes to without the choice; null while it is worked out. */
  without = $state.raw<HandFigures | null>(null);
  fault = $state.raw<string | null>(null);

  #worker: Worker | null = null;
  readonly #looks = new NewestOnly<HandChoice>((choice) => this.#post({ choice }));

  /** Another choice, or the same after something else has changed. */
  watch(job: Job, wallId: string, zoneId: string, id: string): void {
    this.stop();
    this.#worker = handWeigher();
    this.#worker.onmessage = ({ data }: MessageEvent<HandReply>) => this.#receive(data);
    this.#worker.onerror = ({ message }) => (this.fault = message);
    this.#post({ job, wallId, zoneId, id });
  }

  look(choice: HandChoice): void {
    if (this.#worker) this.#looks.ask(choice);
  }

  stop(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#looks.forget();
    this.figures = this.without = this.fault = null;
  }

  #post(request: HandRequest): void {
    this.#worker?.postMessage(request);
  }

  #receive(reply: HandReply): void {
    if ('without' in reply) this.without = reply.without;
    else if ('fault' in reply) this.fault = reply.fault;
    else {
      this.figures = reply.figures;
      this.#looks.answered();
    }
  }
}
