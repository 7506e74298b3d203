import type { HandChoice, Job } from '../../core/job/schema';
import type { HandFigures } from '../../core/run/hand-figures';
import type { HandReply, HandRequest } from './hand-protocol';
import { handWeigher } from './hand-weigher';

/**
 * What a zone comes to with a choice by hand and without it, from a worker of its own: one place is asked for at a time,
 * and the newest next, so that a fast hand leaves no queue behind it.
 */
export class HandWatch {
  figures = $state.raw<HandFigures | null>(null);
  /** What the zone comes to without the choice; null while it is worked out. */
  without = $state.raw<HandFigures | null>(null);
  fault = $state.raw<string | null>(null);

  #worker: Worker | null = null;
  #isAsked = false;
  #next: HandChoice | null = null;

  /** Another choice, or the same after something else has changed. */
  watch(job: Job, wallId: string, zoneId: string, id: string): void {
    this.stop();
    this.#worker = handWeigher();
    this.#worker.onmessage = ({ data }: MessageEvent<HandReply>) => this.#receive(data);
    this.#worker.onerror = ({ message }) => (this.fault = message);
    this.#post({ job, wallId, zoneId, id });
  }

  look(choice: HandChoice): void {
    if (!this.#worker) return;
    this.#next = choice;
    if (!this.#isAsked) this.#ask();
  }

  stop(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#isAsked = false;
    this.#next = null;
    this.figures = this.without = this.fault = null;
  }

  #ask(): void {
    if (!this.#next) return;
    this.#isAsked = true;
    this.#post({ choice: this.#next });
    this.#next = null;
  }

  #post(request: HandRequest): void {
    this.#worker?.postMessage(request);
  }

  #receive(reply: HandReply): void {
    if ('without' in reply) this.without = reply.without;
    else if ('fault' in reply) this.fault = reply.fault;
    else {
      this.figures = reply.figures;
      this.#isAsked = false;
      this.#ask();
    }
  }
}
