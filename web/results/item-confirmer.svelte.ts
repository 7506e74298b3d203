import type { ConfirmedHung } from '../../core/holding/confirm-hung';
import type { ConfirmReply, ConfirmRequest } from './confirm-protocol';
import { startConfirmer } from './start-confirmer';

/**
 * Confirms an item by finite elements, when asked: in a worker of its own, which is ended as soon as the answer is there, is no
 * longer wanted, or what it was asked about has changed.
 */
export class ItemConfirmer {
  found = $state.raw<ConfirmedHung | null>(null);
  busy = $state.raw(false);
  /** A fault of ours, in words. */
  fault = $state.raw<string | null>(null);

  #worker: Worker | null = null;

  ask(request: ConfirmRequest): void {
    this.forget();
    this.busy = true;
    const worker = startConfirmer();
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<ConfirmReply>) => this.#receive(data);
    worker.onerror = ({ message }) => this.#receive({ fault: message });
    worker.postMessage(request);
  }

  /** Ends the work, and what was found goes with it: it was about a job that is another now. */
  forget(): void {
    this.#stop();
    this.found = this.fault = null;
  }

  #receive(reply: ConfirmReply): void {
    if ('fault' in reply) this.fault = reply.fault;
    else this.found = reply.found;
    this.#stop();
  }

  #stop(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.busy = false;
  }
}
