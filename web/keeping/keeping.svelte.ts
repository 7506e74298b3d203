import type { Job } from '../../core/job/schema';
import { readJob } from '../../core/job/read';
import { writeJob } from '../../core/job/write';
import { freshKey, JobStore, type KeptHead, type KeptJob, type Place } from './store';

/**
 * kept: what is on the screen lies on this device. keeping: a write is under way. unavailable: the browser
 * gives no storage; only "Save file" keeps the job.
 */
export type KeepingState = 'kept' | 'keeping' | 'unavailable';

interface Wanted {
  readonly job: Job;
  readonly place: Place;
}

/** Said to the other tabs after every write. */
interface Written {
  readonly id: string;
  readonly stamp: string;
}

const thisTab = 'lodeplan-open-job';

/**
 * Keeps the open job on this device after every settled change. Two tabs on one job follow each other; if both
 * change it at once, the slower one goes on as a copy, so that neither overwrites the other unseen.
 */
export class Keeping {
  state = $state.raw<KeepingState>('kept');
  /** Why nothing can be kept, or what became of the job, in words; null while all is well. */
  message = $state.raw<string | null>(null);
  id = $state.raw('');

  readonly #store: JobStore | null;
  readonly #channel = new BroadcastChannel('lodeplan-jobs');
  #stamp: string | undefined;
  #keptJob: Job | null = null;
  #keptAt = 0;
  #wanted: Wanted | null = null;
  #writing = false;

  private constructor(store: JobStore | null) {
    this.#store = store;
  }

  static async start(): Promise<Keeping> {
    try {
      return new Keeping(await JobStore.open());
    } catch (reason) {
      const keeping = new Keeping(null);
      keeping.#complain(reason);
      return keeping;
    }
  }

  /** The job this tab had open, or the one that was open last; null if nothing readable is kept. */
  async lastOpen(): Promise<{ job: Job; place: Place } | null> {
    if (!this.#store) return null;
    const heads = await this.#store.list();
    const ids = [rememberedByTab(), await this.#store.lastId(), ...heads.map(({ id }) => id)];
    for (const id of ids) {
      const found = id ? await this.open(id) : null;
      if (found) return found;
    }
    return null;
  }

  /** Makes a kept job the one that is kept from now on; null if it is gone or cannot be read. */
  async open(id: string): Promise<{ job: Job; place: Place } | null> {
    const kept = await this.#store?.read(id);
    if (!kept) return null;
    const { job } = readJob(kept.text);
    if (!job) return null;
    await this.#finish();
    this.#adopt(kept, job);
    return { job, place: { wallId: kept.wallId, station: kept.station } };
  }

  /** From now on a new entry of the list is kept; the present one stays there as it is. */
  async begin(): Promise<void> {
    await this.#finish();
    this.#startEntry();
    this.message = null;
  }

  /** Call after every settled change of the job or of the place; writes follow each other, never overlap. */
  keep(job: Job, place: Place): void {
    if (!this.#store) return;
    this.#wanted = { job, place };
    if (job !== this.#keptJob && this.state === 'kept') this.state = 'keeping';
    if (!this.#writing) void this.#write();
  }

  /** Calls back with the job when another tab has changed it. */
  onChangedElsewhere(take: (job: Job) => void): void {
    this.#channel.onmessage = async ({ data }: MessageEvent<Written>) => {
      if (data.id !== this.id || data.stamp === this.#stamp || this.#wanted) return;
      const kept = await this.#store?.read(data.id);
      const job = kept && readJob(kept.text).job;
      if (!kept || !job || this.#wanted) return;
      this.#adopt(kept, job);
      take(job);
    };
  }

  list(): Promise<KeptHead[]> {
    return this.#store?.list() ?? Promise.resolve([]);
  }

  async copy(id: string): Promise<void> {
    const kept = await this.#store?.read(id);
    const job = kept && readJob(kept.text).job;
    if (!kept || !job) return;
    const name = `${job.name}, copy`;
    const text = writeJob({ ...job, name });
    await this.#store?.putBack({
      ...kept,
      id: freshKey(),
      stamp: freshKey(),
      name,
      text,
      keptAt: Date.now(),
    });
  }

  /** Takes a job off this device and gives it back, so that the deletion can be undone. */
  async remove(id: string): Promise<KeptJob | undefined> {
    const kept = await this.#store?.read(id);
    await this.#store?.remove(id);
    return kept;
  }

  async putBack(kept: KeptJob): Promise<void> {
    await this.#store?.putBack(kept);
  }

  async #finish(): Promise<void> {
    while (this.#writing) await new Promise((resume) => setTimeout(resume, 5));
  }

  async #write(): Promise<void> {
    this.#writing = true;
    try {
      for (let next = this.#wanted; next; next = this.#wanted) {
        await this.#writeOne(next);
        if (this.#wanted === next) this.#wanted = null;
      }
      if (this.state === 'unavailable') this.message = null;
      this.state = 'kept';
    } catch (reason) {
      this.#wanted = null;
      this.#complain(reason);
    } finally {
      this.#writing = false;
    }
  }

  async #writeOne({ job, place }: Wanted): Promise<void> {
    if (!this.id) this.#startEntry();
    const changed = job !== this.#keptJob;
    const keptAt = changed ? Date.now() : this.#keptAt;
    const head = { name: job.name, walls: job.walls.length, keptAt, text: writeJob(job), ...place };
    const stamp = changed ? freshKey() : this.#stamp!;
    const written = await this.#store!.write({ ...head, id: this.id, stamp }, this.#stamp);
    if (!written && changed) {
      this.#startEntry();
      this.message =
        'Changed in another tab at the same moment; this tab goes on as a copy in the list of jobs.';
      await this.#store!.write({ ...head, id: this.id, stamp }, undefined);
    }
    this.#keptJob = job;
    this.#keptAt = keptAt;
    this.#stamp = stamp;
    if (changed) this.#channel.postMessage({ id: this.id, stamp } satisfies Written);
  }

  #startEntry(): void {
    this.id = freshKey();
    this.#stamp = undefined;
    this.#keptJob = null;
    rememberInTab(this.id);
  }

  #adopt(kept: KeptJob, job: Job): void {
    this.id = kept.id;
    this.#stamp = kept.stamp;
    this.#keptJob = job;
    this.#keptAt = kept.keptAt;
    this.message = null;
    rememberInTab(kept.id);
  }

  #complain(reason: unknown): void {
    this.state = 'unavailable';
    const why = reason instanceof Error && reason.message ? ` (${reason.message})` : '';
    this.message = `This browser keeps nothing here${why}. Use “Save file” before you leave the page.`;
  }
}

function rememberedByTab(): string | null {
  try {
    return sessionStorage.getItem(thisTab);
  } catch {
    return null;
  }
}

function rememberInTab(id: string): void {
  try {
    sessionStorage.setItem(thisTab, id);
  } catch {
    // Without session storage the job that was open last is found instead.
  }
}
