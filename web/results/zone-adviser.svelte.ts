import type { AdviceQuestion, ZoneAdvised } from '../../core/run/zone-advice';
import type { AdviceReply, AdviceRequest } from './advice-protocol';
import { startAdviser } from './start-adviser';

/**
 * Looks for zone sizes that save, when asked: in a worker of its own, which is ended as soon as the answer is
 * there, is no longer wanted, or another question takes its place.
 */
export class ZoneAdviser {
  /** What was asked last; the answer is about that job and no other. */
  asked = $state.raw<AdviceQuestion | null>(null);
  advised = $state.raw<ZoneAdvised | null>(null);
  /** Sizes laid out so far. */
  considered = $state.raw(0);
  busy = $state.raw(false);
  /** A fault of ours, in words. */
  fault = $state.raw<string | null>(null);

  #worker: Worker | null = null;

  ask(question: AdviceQuestion): void {
    this.stop();
    this.asked = question;
    this.advised = null;
    this.fault = null;
    this.considered = 0;
    this.busy = true;
    const worker = startAdviser();
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<AdviceReply>) => this.#receive(data);
    worker.onerror = ({ message }) => this.#receive({ fault: message });
    const request: AdviceRequest = question;
    worker.postMessage(request);
  }

  /** Ends the search, whatever it has come to. */
  stop(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.busy = false;
  }

  #receive(reply: AdviceReply): void {
    if ('considered' in reply) {
      this.considered = reply.considered;
      return;
    }
    if ('fault' in reply) this.fault = reply.fault;
    else this.advised = reply.advised;
    this.stop();
  }
}
