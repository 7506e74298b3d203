import { openDB, type IDBPDatabase } from 'idb';
import type { FirmPiece, Holder, Holders } from './firm-piece';
import type { HistoryWrite } from './history-log';
import { inOneTurn } from './in-one-turn';
import type { IssueWrite, JobToKeep, KeepingSchema, KeptFile, KeptHead, KeptJob } from './kept';
import type { KindList } from './kind-lists';
import { PhotoStore } from './photo-store';

const lastJob = 'last-job';
const turns = 'turns';
const noHistory: HistoryWrite = { first: 0, done: 0, end: 0, put: [] };

const longestAnswer = 8000;

/** The jobs of this browser on this device, in IndexedDB. */
export class JobStore {
  readonly photos: PhotoStore;
  readonly #database: IDBPDatabase<KeepingSchema>;

  private constructor(database: IDBPDatabase<KeepingSchema>) {
    this.#database = database;
    this.photos = new PhotoStore(database);
  }

  /** @throws whatever the browser gives as its reason for having no storage */
  static async open(): Promise<JobStore> {
    let refuse: (reason: Error) => void = () => undefined;
    const blocked = new Promise<never>((_, reject) => (refuse = reject));
    const wait = setTimeout(() => refuse(new Error('its storage does not answer')), longestAnswer);
    const opening = openDB<KeepingSchema>('lodeplan', 3, {
      upgrade(database, from) {
        if (from < 1) {
          database.createObjectStore('jobs', { keyPath: 'id' });
          database.createObjectStore('notes');
        }
        if (from < 2) database.createObjectStore('rack', { keyPath: 'key' });
        if (from < 3) {
          database.createObjectStore('photos');
          database.createObjectStore('history');
          database.createObjectStore('files');
        }
      },
      blocked: () => refuse(new Error('an older Lodeplan is open in another tab: close it and reload')),
      // A later version may need the store for itself; this tab then says that it keeps nothing more.
      blocking: (_version, _blocked, { target }) => (target as IDBDatabase).close(),
    });
    return new JobStore(await Promise.race([opening, blocked]).finally(() => clearTimeout(wait)));
  }

  /** The last kept first. */
  async list(): Promise<KeptHead[]> {
    const jobs = await this.#database.getAll('jobs');
    return jobs
      .map(({ text, stamp: _stamp, history: _history, wallId: _wall, station: _station, ...head }) => ({
        ...head,
        size: text.length,
      }))
      .sort((a, b) => (b.turn ?? 0) - (a.turn ?? 0) || b.keptAt - a.keptAt);
  }

  read(id: string): Promise<KeptJob | undefined> {
    return this.#database.get('jobs', id);
  }

  /** A job with the texts of its history, empty where none belongs to this state of it. */
  async readWithHistory(id: string): Promise<{ job: KeptJob; texts: readonly string[] } | undefined> {
    const turn = this.#database.transaction(['jobs', 'history']);
    const job = await turn.objectStore('jobs').get(id);
    if (!job) return undefined;
    const { history } = job;
    if (!history || history.of !== job.stamp || history.end <= history.first) return { job, texts: [] };
    const range = IDBKeyRange.bound([id, history.first], [id, history.end], false, true);
    const changes = await turn.objectStore('history').getAll(range);
    const isWhole = changes.length === history.end - history.first;
    return { job, texts: isWhole ? changes.map(({ text }) => text) : [] };
  }

  /**
   * Writes a job and its history if the job still lies there with the stamp that was last seen (undefined: if it is new).
   *
   * The browser may say so before the disk has it ("relaxed"): a killed browser loses nothing by that, and a change waits
   * for no disk. A power cut could; `settle` bounds that.
   *
   * @returns false, and nothing is written, if someone else wrote it in the meantime or took it away
   */
  async write(
    job: JobToKeep,
    seen: string | undefined,
    history: { write: HistoryWrite; version: number } | null = null,
  ): Promise<boolean> {
    const turn = this.#database.transaction(['jobs', 'notes', 'history'], 'readwrite', {
      durability: 'relaxed',
    });
    return inOneTurn(turn, async (ask) => {
      const jobs = turn.objectStore('jobs');
      const notes = turn.objectStore('notes');
      const [lying, count] = await Promise.all([jobs.get(job.id), notes.get(turns)]);
      if (lying?.stamp !== seen) return false;
      const isSame = lying?.stamp === job.stamp && lying.turn !== undefined;
      const number = isSame ? lying.turn! : countUp(count);
      const { first, done, end, put } = history?.write ?? noHistory;
      const place = history && { history: { first, done, end, of: job.stamp, version: history.version } };
      ask(jobs.put({ ...job, ...place, turn: number }));
      ask(notes.put(job.id, lastJob));
      if (!isSame) ask(notes.put(String(number), turns));
      const changes = turn.objectStore('history');
      ask(changes.delete(IDBKeyRange.bound([job.id], [job.id, first], false, true)));
      ask(changes.delete(IDBKeyRange.bound([job.id, end], [job.id, []])));
      for (const { number: at, text } of put) ask(changes.put({ text }, [job.id, at]));
      return true;
    });
  }

  /** Has the disk confirm all that was written before. */
  async settle(): Promise<void> {
    const turn = this.#database.transaction('notes', 'readwrite', { durability: 'strict' });
    void turn.store.put(await turn.store.get(turns).then((count) => count ?? '0'), turns);
    await turn.done;
  }

  rack(): Promise<FirmPiece[]> {
    return this.#database.getAll('rack');
  }

  /** The rack changed in one turn: what another tab wrote just before is seen, what it writes next waits. */
  async changeRack(
    change: (pieces: readonly FirmPiece[], holders: Holders) => Pick<IssueWrite, 'put' | 'remove'>,
  ): Promise<void> {
    const turn = this.#database.transaction(['jobs', 'rack'], 'readwrite');
    const rack = turn.objectStore('rack');
    const { put, remove } = change(await rack.getAll(), holdersIn(await turn.objectStore('jobs').getAll()));
    for (const piece of put) void rack.put(piece);
    for (const key of remove) void rack.delete(key);
    await turn.done;
  }

  /** Kinds that are offered to every job. */
  async kinds<K>({ key, read }: KindList<K>): Promise<readonly K[]> {
    return read(await this.#database.get('notes', key));
  }

  /** The kinds changed in one turn: what another tab wrote just before is seen. */
  async changeKinds<K>(
    { key, read }: KindList<K>,
    change: (kinds: readonly K[]) => readonly K[],
  ): Promise<readonly K[]> {
    const turn = this.#database.transaction('notes', 'readwrite');
    const kinds = change(read(await turn.store.get(key)));
    void turn.store.put(JSON.stringify(kinds), key);
    await turn.done;
    return kinds;
  }

  /**
   * Writes what an issue leads to, in one turn over jobs and rack.
   *
   * @param plan what is to be written, from the rack as it lies there, or why nothing can be
   * @returns null, or why nothing was written
   */
  async issue(
    id: string,
    seen: string | undefined,
    plan: (pieces: readonly FirmPiece[], holders: Holders) => IssueWrite | { fault: string },
  ): Promise<string | null> {
    const turn = this.#database.transaction(['jobs', 'notes', 'rack'], 'readwrite', { durability: 'strict' });
    return inOneTurn(turn, async (ask) => {
      const jobs = turn.objectStore('jobs');
      const rack = turn.objectStore('rack');
      const lying = await jobs.get(id);
      if (lying?.stamp !== seen) {
        return 'This job was changed in another tab at the same moment; nothing was issued, so look at it and issue it again.';
      }
      const write = plan(await rack.getAll(), holdersIn(await jobs.getAll()));
      if ('fault' in write) return write.fault;
      const notes = turn.objectStore('notes');
      const number = countUp(await notes.get(turns));
      ask(jobs.put({ ...write.job, turn: number }));
      ask(notes.put(String(number), turns));
      ask(notes.put(write.job.id, lastJob));
      for (const piece of write.put) ask(rack.put(piece));
      for (const key of write.remove) ask(rack.delete(key));
      return null;
    });
  }

  /** A job that is new to this browser and stays unopened. */
  async add(job: JobToKeep): Promise<void> {
    const turn = this.#database.transaction(['jobs', 'notes'], 'readwrite');
    await inOneTurn(turn, async (ask) => {
      const number = countUp(await turn.objectStore('notes').get(turns));
      ask(turn.objectStore('jobs').put({ ...job, turn: number }));
      ask(turn.objectStore('notes').put(String(number), turns));
    });
  }

  /** In the list a deleted job can be put back until it is cleared away. */
  async mark(id: string, isDeleted: boolean): Promise<void> {
    const turn = this.#database.transaction('jobs', 'readwrite');
    const job = await turn.store.get(id);
    if (job) {
      const { isDeleted: _, ...rest } = job;
      void turn.store.put(isDeleted ? { ...rest, isDeleted } : rest);
    }
    await turn.done;
  }

  /** Takes deleted jobs off the device for good, with all that belongs to them alone. */
  async clearDeleted(): Promise<void> {
    const turn = this.#database.transaction(['jobs', 'history', 'files'], 'readwrite');
    const jobs = await turn.objectStore('jobs').getAll();
    for (const { id } of jobs.filter(({ isDeleted }) => isDeleted)) {
      void turn.objectStore('jobs').delete(id);
      void turn.objectStore('history').delete(IDBKeyRange.bound([id], [id, []]));
      void turn.objectStore('files').delete(id);
    }
    await turn.done;
  }

  file(id: string): Promise<KeptFile | undefined> {
    return this.#database.get('files', id);
  }

  async putFile(id: string, file: KeptFile): Promise<void> {
    await this.#database.put('files', file, id);
  }

  close(): void {
    this.#database.close();
  }

  lastId(): Promise<string | undefined> {
    return this.#database.get('notes', lastJob);
  }
}

/** Which jobs hold which pieces, from the jobs themselves. */
export function holdersIn(jobs: readonly Pick<KeptHead, 'id' | 'name' | 'holds' | 'isDeleted'>[]): Holders {
  const holders = new Map<string, Holder[]>();
  for (const { id, name, holds = [], isDeleted } of jobs) {
    if (isDeleted) continue;
    for (const key of holds) holders.set(key, [...(holders.get(key) ?? []), { jobKey: id, job: name }]);
  }
  return holders;
}

function countUp(count: string | undefined): number {
  const number = Number(count ?? 0);
  return (Number.isSafeInteger(number) ? number : 0) + 1;
}

/** Unique enough for one browser; works where `crypto.randomUUID` does not exist (plain http on a local network). */
export function freshKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
