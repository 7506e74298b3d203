import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { FirmPiece, Holder, Holders } from './firm-piece';
import { PhotoStore, type KeptPhoto } from './photo-store';

/** Where the user was: found again after a reload. */
export interface Place {
  readonly wallId: string;
  readonly station: string;
}

export interface KeptHead {
  readonly id: string;
  readonly name: string;
  readonly walls: number;
  /** Milliseconds since 1970. */
  readonly keptAt: number;
  /** Keys of the firm's rack pieces that the job has on its own rack; absent in entries of earlier versions. */
  readonly holds?: readonly string[];
}

/** A job as it lies on the device: its file, and what the list of jobs shows without reading it. */
export interface KeptJob extends KeptHead, Place {
  readonly text: string;
  /** Another one at every write, so that two tabs on one job notice each other. */
  readonly stamp: string;
}

/** One change that can be undone or made again, as it lies on the device. */
export interface KeptChange {
  /** What differs before and after, as JSON. */
  readonly text: string;
}

export interface KeptFile {
  readonly handle: FileSystemFileHandle;
  /** Of the file when it was last read or written here: it tells whether something else has changed it since. */
  readonly lastModified: number;
  readonly size: number;
}

export interface KeepingSchema extends DBSchema {
  jobs: { key: string; value: KeptJob };
  notes: { key: string; value: string };
  rack: { key: string; value: FirmPiece };
  /** By the SHA-256 of the bytes, in hex. */
  photos: { key: string; value: KeptPhoto };
  /** By job and number, counted up as changes are made. */
  history: { key: [job: string, number: number]; value: KeptChange };
  /** By job: the file on disk that it was opened from or saved to. */
  files: { key: string; value: KeptFile };
}

/** What one issue writes: the job with its record and the rack as it is then, together or not at all. */
export interface IssueWrite {
  readonly job: KeptJob;
  readonly put: readonly FirmPiece[];
  readonly remove: readonly string[];
}

const lastJob = 'last-job';

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
    return new JobStore(await Promise.race([opening, blocked]));
  }

  async list(): Promise<KeptHead[]> {
    const jobs = await this.#database.getAll('jobs');
    return jobs
      .map(({ id, name, walls, keptAt, holds = [] }) => ({ id, name, walls, keptAt, holds }))
      .sort((a, b) => b.keptAt - a.keptAt);
  }

  read(id: string): Promise<KeptJob | undefined> {
    return this.#database.get('jobs', id);
  }

  /**
   * Writes a job if it still lies there with the stamp that was last seen (undefined: if it is new).
   *
   * @returns false, and nothing is written, if someone else wrote it in the meantime or took it away
   */
  async write(job: KeptJob, seen: string | undefined): Promise<boolean> {
    const turn = this.#database.transaction(['jobs', 'notes'], 'readwrite');
    const lying = await turn.objectStore('jobs').get(job.id);
    const ours = lying?.stamp === seen;
    if (ours) {
      void turn.objectStore('jobs').put(job);
      void turn.objectStore('notes').put(job.id, lastJob);
    }
    await turn.done;
    return ours;
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
    const turn = this.#database.transaction(['jobs', 'notes', 'rack'], 'readwrite');
    const jobs = turn.objectStore('jobs');
    const rack = turn.objectStore('rack');
    const lying = await jobs.get(id);
    if (lying?.stamp !== seen) {
      await turn.done;
      return 'This job was changed in another tab at the same moment; nothing was issued, so look at it and issue it again.';
    }
    const write = plan(await rack.getAll(), holdersIn(await jobs.getAll()));
    if ('fault' in write) {
      await turn.done;
      return write.fault;
    }
    void jobs.put(write.job);
    void turn.objectStore('notes').put(write.job.id, lastJob);
    for (const piece of write.put) void rack.put(piece);
    for (const key of write.remove) void rack.delete(key);
    await turn.done;
    return null;
  }

  async putBack(job: KeptJob): Promise<void> {
    await this.#database.put('jobs', job);
  }

  async remove(id: string): Promise<void> {
    await this.#database.delete('jobs', id);
  }

  lastId(): Promise<string | undefined> {
    return this.#database.get('notes', lastJob);
  }
}

/** Which jobs hold which pieces, from the jobs themselves. */
export function holdersIn(jobs: readonly Pick<KeptHead, 'id' | 'name' | 'holds'>[]): Holders {
  const holders = new Map<string, Holder[]>();
  for (const { id, name, holds = [] } of jobs) {
    for (const key of holds) holders.set(key, [...(holders.get(key) ?? []), { jobKey: id, job: name }]);
  }
  return holders;
}

/** Unique enough for one browser; works where `crypto.randomUUID` does not exist (plain http on a local network). */
export function freshKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
