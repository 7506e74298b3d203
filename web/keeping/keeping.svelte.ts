import type { Job } from '../../core/job/schema';
import { readJob } from '../../core/job/read';
import { writeJob } from '../../core/job/write';
import { noHolders, type FirmPiece, type Holders } from './firm-piece';
import { FirmRack } from './firm-rack.svelte';
import { PhotoStore } from './photo-store';
import { freshKey, JobStore, type IssueWrite, type KeptHead, type KeptJob, type Place } from './store';

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

/** An issued job and what becomes of the firm's rack. */
export type Issued = Pick<IssueWrite, 'put' | 'remove'> & { readonly job: Job };

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
  /** Beside the jobs: what lies on the firm's rack. */
  readonly firm: FirmRack;
  readonly photos: PhotoStore;

  readonly #store: JobStore | null;
  readonly #channel = new BroadcastChannel('lodeplan-jobs');
  #stamp: string | undefined;
  #keptJob: Job | null = null;
  #keptAt = 0;
  #wanted: Wanted | null = null;
  #writing = false;

  private constructor(store: JobStore | null) {
    this.#store = store;
    this.firm = new FirmRack(store);
    this.photos = store?.photos ?? new PhotoStore(null);
    void this.photos.clearUnused().catch(() => undefined);
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
    // A piece of the firm's rack lies in one job only.
    const copy = { ...job, name, rack: job.rack.filter(({ firm }) => firm === undefined) };
    const { wallId, station } = kept;
    await this.#store?.putBack({
      ...entryOf(copy, { wallId, station }),
      id: freshKey(),
      stamp: freshKey(),
      keptAt: Date.now(),
    });
  }

  /** Takes a job off this device and gives it back, so that the deletion can be undone. */
  async remove(id: string): Promise<KeptJob | undefined> {
    const kept = await this.#store?.read(id);
    await this.#store?.remove(id);
    this.#tellOthers({ id, stamp: '' });
    return kept;
  }

  async putBack(kept: KeptJob): Promise<void> {
    await this.#store?.putBack(kept);
    this.#tellOthers(kept);
  }

  /**
   * Keeps an issued job and books its rack pieces in one turn. Where nothing can be kept the job is issued all the
   * same, without bookings.
   *
   * @returns the issued job, or why nothing was issued
   */
  async issue(
    place: Place,
    plan: (pieces: readonly FirmPiece[], holders: Holders) => Issued | { fault: string },
  ): Promise<{ job: Job } | { fault: string }> {
    if (!this.#store) return plan([], noHolders);
    await this.#finish();
    this.#writing = true;
    try {
      if (!this.id) this.#startEntry();
      const stamp = freshKey();
      const keptAt = Date.now();
      let issued: Job | undefined;
      const fault = await this.#store.issue(this.id, this.#stamp, (pieces, holders) => {
        const planned = plan(pieces, holders);
        if ('fault' in planned) return planned;
        issued = planned.job;
        return { ...planned, job: { ...entryOf(planned.job, place), id: this.id, stamp, keptAt } };
      });
      if (fault !== null || !issued) return { fault: fault ?? 'Nothing was issued.' };
      this.#keptJob = issued;
      this.#keptAt = keptAt;
      this.#stamp = stamp;
      this.#tellOthers({ id: this.id, stamp });
      this.firm.tellOthers();
      return { job: issued };
    } finally {
      this.#writing = false;
      if (this.#wanted) void this.#write();
    }
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
    const entry = { ...entryOf(job, place), keptAt };
    const stamp = changed ? freshKey() : this.#stamp!;
    const written = await this.#store!.write({ ...entry, id: this.id, stamp }, this.#stamp);
    if (!written && changed) {
      this.#startEntry();
      this.message =
        'Changed in another tab at the same moment; this tab goes on as a copy in the list of jobs.';
      await this.#store!.write({ ...entry, id: this.id, stamp }, undefined);
    }
    this.#keptJob = job;
    this.#keptAt = keptAt;
    this.#stamp = stamp;
    if (changed) this.#tellOthers({ id: this.id, stamp });
  }

  #tellOthers({ id, stamp }: Written): void {
    this.#channel.postMessage({ id, stamp } satisfies Written);
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

function entryOf(job: Job, place: Place): Omit<KeptJob, 'id' | 'stamp' | 'keptAt'> {
  const holds = job.rack.flatMap(({ firm }) => (firm === undefined ? [] : [firm]));
  return { name: job.name, walls: job.walls.length, holds, text: writeJob(job), ...place };
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
