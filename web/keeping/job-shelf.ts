import { readJob } from '../../core/job/read';
import type { Job } from '../../core/job/schema';
import { entryOf } from './entry';
import type { KeptHead } from './kept';
import { freshKey, type JobStore } from './store';

/** The list of all jobs on the device, whichever is open. */
export class JobShelf {
  readonly #store: () => JobStore | null;
  readonly #inUse: () => Promise<ReadonlySet<string>>;
  readonly #channel = new BroadcastChannel('lodeplan-jobs');

  constructor(store: () => JobStore | null, inUse: () => Promise<ReadonlySet<string>>) {
    this.#store = store;
    this.#inUse = inUse;
  }

  /** The last kept first. */
  async heads(): Promise<KeptHead[]> {
    return (await this.#store()?.list()) ?? [];
  }

  /** A job as it was kept last; null if it is gone or cannot be read. */
  async read(id: string): Promise<Job | null> {
    const kept = await this.#store()?.read(id);
    return (kept && readJob(kept.text).job) ?? null;
  }

  /** Jobs that some tab is changing. */
  inUse(): Promise<ReadonlySet<string>> {
    return this.#inUse();
  }

  async copy(id: string): Promise<void> {
    const kept = await this.#store()?.read(id);
    const job = kept && readJob(kept.text).job;
    if (!kept || !job) return;
    const name = `${job.name}, copy`;
    // A piece of the firm's rack lies in one job only.
    const copy = { ...job, name, rack: job.rack.filter(({ firm }) => firm === undefined) };
    await this.#store()?.add({
      ...entryOf(copy, kept),
      id: freshKey(),
      stamp: freshKey(),
      keptAt: Date.now(),
    });
  }

  /** Marks a job as deleted, or takes the mark off again. */
  async mark(id: string, isDeleted: boolean): Promise<void> {
    await this.#store()?.mark(id, isDeleted);
    this.#channel.postMessage({ id, stamp: '' });
  }

  /** Takes marked jobs off the device. */
  async clearDeleted(): Promise<void> {
    await this.#store()?.clearDeleted();
  }
}
