import type { Point } from '../../core/geometry/polygon';
import type { Job } from '../../core/job/schema';
import type { StartFigures } from '../../core/run/start-scale';
import type { StartPlaces, StartReply, StartRequest } from './start-protocol';
import { startWeigher } from './start-weigher';
import { NewestOnly } from './newest-only';

/** Figures of starts while a hand looks for one, from a worker of its own. */
export class StartWatch {
  places = $state.raw<StartPlaces | null>(null);
  figures = $state.raw<StartFigures | null>(null);
  /** Best first; null while they are looked for. */
  best = $state.raw<readonly StartFigures[] | null>(null);
  fault = $state.raw<string | null>(null);

  #worker: Worker | null = null;
  readonly #looks = new NewestOnly<Point>((start) => this.#post({ start }));

  /** Another zone, or the same after something else about it has changed. */
  watch(job: Job, wallId: string, zoneId: string): void {
    this.stop();
    this.#worker = startWeigher();
    this.#worker.onmessage = ({ data }: MessageEvent<StartReply>) => this.#receive(data);
    this.#worker.onerror = ({ message }) => (this.fault = message);
    this.#post({ job, wallId, zoneId });
  }

  look(start: Point): void {
    if (this.#worker) this.#looks.ask(start);
  }

  stop(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#looks.forget();
    this.places = this.figures = this.best = this.fault = null;
  }

  #post(request: StartRequest): void {
    this.#worker?.postMessage(request);
  }

  #receive(reply: StartReply): void {
    if ('places' in reply) this.places = reply.places;
    else if ('best' in reply) this.best = reply.best;
    else if ('fault' in reply) this.fault = reply.fault;
    else {
      this.figures = reply.figures;
      this.#looks.answered();
    }
  }
}
