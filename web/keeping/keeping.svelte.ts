import { readJob } from '../../core/job/read';
import type { HungKind } from '../../core/job/hung-schema';
import type { Job, OwnKind } from '../../core/job/schema';
import { EditingRight } from './editing-right';
import { entryOf, whyNotKept } from './entry';
import { noHolders, type FirmPiece, type Holders } from './firm-piece';
import { FirmRack } from './firm-rack.svelte';
import { HistoryLog, type History } from './history-log';
import { changesFromTexts } from './history-text';
import { JobFiles } from './job-files';
import { JobShelf } from './job-shelf';
import type { IssueWrite, KeptJob, Place } from './kept';
import { KeptKinds } from './kept-kinds.svelte';
import { fittingKindList, hungKindList } from './kind-lists';
import { PhotoStore } from './photo-store';
import { freshKey, JobStore } from './store';
import { rememberChanging, rememberedByTab, rememberInTab, wasChanging } from './tab-memory';
import { leaveUnfinished, takeUnfinished } from './unfinished-write';

/**
 * kept: what is on the screen lies on this device. keeping: a write is under way. unavailable: the browser gives no
 * storage or no room; only "Save file" keeps the job, and keeping is tried again at every change.
 */
export type KeepingState = 'kept' | 'keeping' | 'unavailable';

export interface Opened {
  readonly job: Job;
  readonly place: Place;
  readonly history: History;
}

/** What keeping asks of the screen. */
export interface Screen {
  /** The job was changed in another tab, which has the right to. */
  follow(job: Job): void;
  /** From now on this tab has the right to change the job, which is the one given. */
  goOnWith(opened: Opened): void;
  /** The job was changed in another tab although this one may change it too: only without Web Locks. */
  takeChange(job: Job): void;
  /** Ends a gesture that is under way as if it had never begun. */
  putDown(): void;
}

interface Wanted {
  readonly job: Job;
  readonly place: Place;
  readonly history: History;
}

/** Said to the other tabs after every write. */
interface Written {
  readonly id: string;
  readonly stamp: string;
}

/** An issued job and what becomes of the firm's rack. */
export type Issued = Pick<IssueWrite, 'put' | 'remove'> & { readonly job: Job };

const noHistory: History = { done: [], undone: [] };
/** After so long without a change the disk is asked to confirm what the browser has taken. */
const quiet = 2000;

/**
 * Keeps the open job and its history on this device after every settled change. One tab changes a job, others follow
 * it. Where the browser cannot say which one does and both change it at once, the slower goes on as a copy, so that
 * neither overwrites the other unseen.
 */
export class Keeping {
  state = $state.raw<KeepingState>('kept');
  /** Why nothing can be kept, or what became of the job, in words; null while all is well. */
  message = $state.raw<string | null>(null);
  id = $state.raw('');
  /** Another tab has the right to change this job. */
  following = $state.raw(false);
  /** Beside the jobs: what lies on the firm's rack, kinds of fitting and of hung item, and photos. */
  readonly firm: FirmRack;
  readonly kinds: KeptKinds<OwnKind>;
  readonly hungKinds: KeptKinds<HungKind>;
  readonly photos: PhotoStore;
  readonly list = new JobShelf(
    () => this.#store,
    () => this.#right.inUse(),
  );
  readonly files = new JobFiles(() => this.#store);
  screen: Screen | null = null;

  #store: JobStore | null = null;
  readonly #channel = new BroadcastChannel('lodeplan-jobs');
  readonly #right = new EditingRight(freshKey(), {
    handOver: () => this.#handOver(),
    gained: () => void this.#gain(),
    lost: () => this.#lose(),
  });
  #stamp: string | undefined;
  /** Of the write that is under way. */
  #nextStamp: string | undefined;
  #keptJob: Job | null = null;
  #keptAt = 0;
  #last: Wanted | null = null;
  #log = new HistoryLog();
  #wanted: Wanted | null = null;
  #writing = false;
  #settling: ReturnType<typeof setTimeout> | undefined;
  #isAskedToPersist = false;

  private constructor(store: JobStore | null) {
    this.#store = store;
    this.firm = new FirmRack(store);
    this.kinds = new KeptKinds(store, fittingKindList);
    this.hungKinds = new KeptKinds(store, hungKindList);
    for (const kinds of [this.kinds, this.hungKinds]) void kinds.refresh().catch(() => undefined);
    this.photos = store?.photos ?? new PhotoStore(null);
    void this.photos.clearUnused().catch(() => undefined);
    addEventListener('pagehide', () => this.#leave());
    this.#channel.onmessage = ({ data }: MessageEvent<Written>) => void this.#hear(data);
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
  async lastOpen(): Promise<Opened | null> {
    if (!this.#store) return null;
    await this.#makeGood(this.#store);
    const heads = await this.#store.list();
    const ids = [rememberedByTab(), await this.#store.lastId(), ...heads.map(({ id }) => id)];
    for (const id of ids) {
      const found = id ? await this.open(id) : null;
      if (found) return found;
    }
    return null;
  }

  /** Makes a kept job the one that is kept from now on; null if it is gone or cannot be read. */
  async open(id: string): Promise<Opened | null> {
    const found = await this.#read(id);
    if (!found) return null;
    await this.#finish();
    let isOurs = await this.#right.claim(id);
    // A tab that waited has got it while this page was loaded again.
    if (!isOurs && wasChanging(id)) isOurs = (await this.#right.takeOver()) === null;
    // Whoever had the right may have used it in the meantime.
    const now = (await this.#store?.read(id))?.stamp === found.kept.stamp ? found : await this.#read(id);
    if (!now) return null;
    this.following = !isOurs;
    return this.#adopt(now.kept, now.job, isOurs ? now.texts : []);
  }

  /** From now on a new entry of the list is kept; the present one stays there as it is. */
  async begin(): Promise<void> {
    await this.#finish();
    await this.#startEntry();
    if (this.state !== 'unavailable') this.message = null;
  }

  /** Call after every settled change of the job or of the place; the write begins at once unless one is under way. */
  keep(job: Job, place: Place, history: History): void {
    if (this.following) return;
    const { job: lastJob, place: lastPlace, history: lastHistory } = this.#last ?? {};
    const isSameHistory = history.done === lastHistory?.done && history.undone === lastHistory.undone;
    const isSamePlace = place.wallId === lastPlace?.wallId && place.station === lastPlace.station;
    if (job === lastJob && isSameHistory && isSamePlace && !this.#wanted) return;
    this.#wanted = { job, place, history };
    if (job !== this.#keptJob && this.state === 'kept') this.state = 'keeping';
    if (!this.#writing) void this.#write();
  }

  /** Makes this the tab that changes the job; what hinders it is said. */
  async takeOver(): Promise<void> {
    this.message = await this.#right.takeOver();
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
      if (!this.id) await this.#startEntry();
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

  /** What the database may not take any more is left to the page that is loaded next in this tab. */
  #leave(): void {
    rememberChanging(this.following ? '' : this.id);
    const wanted = this.following || !this.id ? null : this.#wanted;
    if (!wanted) return leaveUnfinished(null);
    const { job, place, history } = wanted;
    leaveUnfinished({
      job: { ...entryOf(job, place), keptAt: Date.now(), id: this.id, stamp: freshKey() },
      history: { write: this.#log.next(history).write, version: job.version },
      seen: [this.#stamp ?? null, this.#nextStamp ?? null],
    });
  }

  async #makeGood(store: JobStore): Promise<void> {
    const left = takeUnfinished();
    if (!left) return;
    const lying = (await store.read(left.job.id))?.stamp;
    if (!left.seen.includes(lying ?? null)) return;
    await store.write(left.job, lying, left.history).catch((reason: unknown) => this.#complain(reason));
  }

  async #finish(): Promise<void> {
    while (this.#writing) await new Promise((resume) => setTimeout(resume, 5));
  }

  async #write(): Promise<void> {
    this.#writing = true;
    try {
      this.#store ??= await this.#openAgain();
      for (let next = this.#wanted; next; next = this.#wanted) {
        await this.#writeOne(next, this.#store);
        this.#last = next;
        if (this.#wanted === next) this.#wanted = null;
      }
      if (this.state === 'unavailable') this.message = null;
      this.state = 'kept';
      this.#settleSoon();
    } catch (reason) {
      this.#wanted = null;
      this.#last = null;
      // The connection was closed: the store was cleared away, or a newer Lodeplan needs it.
      if (reason instanceof Error && reason.name === 'InvalidStateError') this.#store = null;
      this.#complain(reason);
    } finally {
      this.#writing = false;
    }
  }

  async #writeOne({ job, place, history }: Wanted, store: JobStore): Promise<void> {
    if (!this.id) await this.#startEntry();
    const changed = job !== this.#keptJob;
    const keptAt = changed ? Date.now() : this.#keptAt;
    const entry = { ...entryOf(job, place), keptAt };
    const stamp = changed ? freshKey() : this.#stamp!;
    this.#nextStamp = stamp;
    const { write, written } = this.#log.next(history);
    const { version } = job;
    if (await store.write({ ...entry, id: this.id, stamp }, this.#stamp, { write, version })) {
      written();
    } else if (changed) {
      await this.#startEntry();
      this.message =
        'Changed in another tab at the same moment; this tab goes on as a copy in the list of jobs.';
      const anew = this.#log.next(history);
      await store.write({ ...entry, id: this.id, stamp }, undefined, { write: anew.write, version });
      anew.written();
    }
    this.#keptJob = job;
    this.#keptAt = keptAt;
    this.#stamp = stamp;
    if (changed) this.#tellOthers({ id: this.id, stamp });
    if (history.done.length > 0) this.#askToPersist();
  }

  /** A browser short of room clears away what no one asked it to keep. */
  #askToPersist(): void {
    if (this.#isAskedToPersist) return;
    this.#isAskedToPersist = true;
    void navigator.storage?.persist?.().catch(() => false);
  }

  #settleSoon(): void {
    clearTimeout(this.#settling);
    this.#settling = setTimeout(() => void this.#store?.settle().catch(() => undefined), quiet);
  }

  async #openAgain(): Promise<JobStore> {
    const store = await JobStore.open();
    this.firm.attach(store);
    await Promise.all([this.kinds.attach(store), this.hungKinds.attach(store)]);
    await this.photos.attach(store.photos);
    return store;
  }

  async #read(id: string) {
    const found = await this.#store?.readWithHistory(id);
    const job = found && !found.job.isDeleted && readJob(found.job.text).job;
    return job ? { kept: found.job, texts: found.texts, job } : null;
  }

  async #hear({ id, stamp }: Written): Promise<void> {
    if (id !== this.id || stamp === this.#stamp || this.#wanted) return;
    const found = await this.#read(id);
    if (!found || this.#wanted || id !== this.id) return;
    const { following } = this;
    this.#adopt(found.kept, found.job, []);
    if (following) this.screen?.follow(found.job);
    else this.screen?.takeChange(found.job);
  }

  /** Another tab asks for the right to change the job: first all that is done here is written. */
  async #handOver(): Promise<string | null> {
    this.following = true;
    this.screen?.putDown();
    await this.#finish();
    if (this.state === 'unavailable') {
      this.following = false;
      return 'The other tab has changes that could not be kept: save them there as a file, then take the job over.';
    }
    // Should the other tab be gone by now, this one goes on.
    setTimeout(() => (this.following = !this.#right.isHeld), 5000);
    return null;
  }

  async #gain(): Promise<void> {
    const found = await this.#read(this.id);
    if (!found) return;
    const opened = this.#adopt(found.kept, found.job, found.texts);
    this.following = false;
    this.screen?.goOnWith(opened);
  }

  #lose(): void {
    this.following = true;
    this.screen?.putDown();
    void this.#hear({ id: this.id, stamp: '' });
  }

  #tellOthers({ id, stamp }: Written): void {
    this.#channel.postMessage({ id, stamp } satisfies Written);
  }

  async #startEntry(): Promise<void> {
    this.id = freshKey();
    this.#stamp = undefined;
    this.#keptJob = null;
    this.#log = new HistoryLog();
    rememberInTab(this.id);
    await this.#right.claim(this.id);
    this.following = false;
  }

  #adopt(kept: KeptJob, job: Job, texts: readonly string[]): Opened {
    const place = { wallId: kept.wallId, station: kept.station };
    const { first = 0, done = 0, version } = kept.history ?? {};
    // What another version of the format wrote does not fit a job that was migrated.
    const history =
      texts.length > 0 && version === job.version ? changesFromTexts(job, texts, done - first) : noHistory;
    const unread = Math.max(0, done - first - history.done.length);
    const sizes = texts.map(({ length }) => length).slice(unread);
    this.#log = HistoryLog.read(history, first + unread, sizes);
    this.id = kept.id;
    this.#stamp = kept.stamp;
    this.#keptJob = job;
    this.#keptAt = kept.keptAt;
    this.#last = null;
    this.message = null;
    rememberInTab(kept.id);
    return { job, place, history };
  }

  #complain(reason: unknown): void {
    this.state = 'unavailable';
    this.message = whyNotKept(reason);
  }
}
