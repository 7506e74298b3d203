import { openDB, type DBSchema, type IDBPDatabase } from 'idb';

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
}

/** A job as it lies on the device: its file, and what the list of jobs shows without reading it. */
export interface KeptJob extends KeptHead, Place {
  readonly text: string;
  /** Another one at every write, so that two tabs on one job notice each other. */
  readonly stamp: string;
}

interface Schema extends DBSchema {
  jobs: { key: string; value: KeptJob };
  notes: { key: string; value: string };
}

const lastJob = 'last-job';

/** The jobs of this browser on this device, in IndexedDB. */
export class JobStore {
  readonly #database: IDBPDatabase<Schema>;

  private constructor(database: IDBPDatabase<Schema>) {
    this.#database = database;
  }

  /** @throws whatever the browser gives as its reason for having no storage */
  static async open(): Promise<JobStore> {
    const database = await openDB<Schema>('lodeplan', 1, {
      upgrade(fresh) {
        fresh.createObjectStore('jobs', { keyPath: 'id' });
        fresh.createObjectStore('notes');
      },
    });
    return new JobStore(database);
  }

  async list(): Promise<KeptHead[]> {
    const jobs = await this.#database.getAll('jobs');
    return jobs
      .map(({ id, name, walls, keptAt }) => ({ id, name, walls, keptAt }))
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

/** Unique enough for one browser; works where `crypto.randomUUID` does not exist (plain http on a local network). */
export function freshKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
