import type { IDBPDatabase } from 'idb';
import { photoIdOf } from '../../core/job/photo-bytes';
import type { KeepingSchema } from './kept';

export interface KeptPhoto {
  readonly bytes: Blob;
  readonly type: string;
  /** Milliseconds since 1970: when it was put here. */
  readonly putAt: number;
}

/** So long a photo stays although no job names it: its job may be about to be kept, in this tab or another. */
const grace = 24 * 3600 * 1000;

/**
 * Photos of all jobs, each once, under the SHA-256 of its bytes; a job names them by that key. Where nothing can be kept
 * they stay in memory until the page is left.
 */
export class PhotoStore {
  #database: IDBPDatabase<KeepingSchema> | null;
  readonly #inMemory = new Map<string, KeptPhoto>();

  constructor(database: IDBPDatabase<KeepingSchema> | null) {
    this.#database = database;
  }

  /** The browser gives storage after all, or again: what was only in memory goes there. */
  async attach(other: PhotoStore): Promise<void> {
    this.#database = other.#database;
    for (const [key, photo] of this.#inMemory) await this.#database?.put('photos', photo, key);
  }

  /**
   * Puts a photo before the change that names it, so that no kept job names a photo that is missing.
   *
   * @returns its key, 64 hex digits
   * @throws the browser's reason (no room left, mostly); the photo is in memory all the same
   */
  async put(bytes: Blob): Promise<string> {
    const key = photoIdOf(new Uint8Array(await bytes.arrayBuffer()));
    const photo = { bytes, type: bytes.type, putAt: Date.now() };
    this.#inMemory.set(key, photo);
    await this.#database?.put('photos', photo, key);
    return key;
  }

  /** undefined if it is not on this device. */
  async get(key: string): Promise<KeptPhoto | undefined> {
    return this.#inMemory.get(key) ?? (await this.#database?.get('photos', key));
  }

  /** Keys that a kept job, or a change of it that can be undone, names. */
  async inUse(): Promise<Set<string>> {
    if (!this.#database) return new Set(this.#inMemory.keys());
    const turn = this.#database.transaction(['jobs', 'history', 'photos']);
    const keys = await turn.objectStore('photos').getAllKeys();
    const jobs = await turn.objectStore('jobs').getAll();
    const changes = await turn.objectStore('history').getAll();
    return namedIn([...jobs, ...changes], keys);
  }

  /**
   * Takes away what no job names any more; what was put within the last day stays.
   *
   * @returns how many were taken away
   */
  async clearUnused(now = Date.now()): Promise<number> {
    if (!this.#database) return 0;
    const turn = this.#database.transaction(['jobs', 'history', 'photos'], 'readwrite');
    const photos = turn.objectStore('photos');
    const keys = await photos.getAllKeys();
    let cleared = 0;
    if (keys.length > 0) {
      const jobs = await turn.objectStore('jobs').getAll();
      const used = namedIn([...jobs, ...(await turn.objectStore('history').getAll())], keys);
      for (const key of keys.filter((one) => !used.has(one) && !this.#inMemory.has(one))) {
        const photo = await photos.get(key);
        if (photo && Math.abs(now - photo.putAt) < grace) continue;
        void photos.delete(key);
        cleared++;
      }
    }
    await turn.done;
    return cleared;
  }
}

/** A hash is found in a text without knowing where a job has its photos; nothing else looks like one. */
function namedIn(texts: readonly { readonly text: string }[], keys: readonly string[]): Set<string> {
  return new Set(keys.filter((key) => texts.some(({ text }) => text.includes(key))));
}
