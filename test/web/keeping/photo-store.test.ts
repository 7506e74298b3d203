import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { openDB } from 'idb';
import { beforeEach, describe, expect, it } from 'vitest';
import { PhotoStore } from '../../../web/keeping/photo-store';
import type { KeptJob } from '../../../web/keeping/kept';
import { JobStore } from '../../../web/keeping/store';

const day = 24 * 3600 * 1000;

function entry(id: string, text: string): KeptJob {
  return { id, name: id, walls: 0, keptAt: 0, wallId: '', station: 'survey', stamp: id, text };
}

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

describe('photos on the device', () => {
  // FIPS 180-2, appendix B.1: the digest of "abc".
  const abc = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';

  it('lie under the SHA-256 of their bytes, each once', async () => {
    const { photos } = await JobStore.open();
    expect(await photos.put(new Blob(['abc'], { type: 'image/png' }))).toBe(abc);
    expect(await photos.put(new Blob(['abc'], { type: 'image/png' }))).toBe(abc);
    const again = await (await JobStore.open()).photos.get(abc);
    expect(again?.type).toBe('image/png');
    expect(await photos.get('0'.repeat(64))).toBeUndefined();
  });

  it('stay as long as a job names them, or a day', async () => {
    const { photos } = await JobStore.open();
    await photos.put(new Blob(['abc']));
    const named = await photos.put(new Blob(['named']));
    const store = await JobStore.open();
    await store.write(entry('J', `{ "photo": "${named}" }`), undefined);
    expect([...(await store.photos.inUse())]).toEqual([named]);
    expect(await store.photos.clearUnused(Date.now() + day / 2)).toBe(0);
    expect(await store.photos.clearUnused(Date.now() + 2 * day)).toBe(1);
    expect(await store.photos.get(abc)).toBeUndefined();
    expect(await store.photos.get(named)).toBeDefined();
  });

  it('stay in the tab that has put them, even if its job cannot be kept', async () => {
    const { photos } = await JobStore.open();
    const key = await photos.put(new Blob(['abc']));
    expect(await photos.clearUnused(Date.now() + 2 * day)).toBe(0);
    expect(await photos.get(key)).toBeDefined();
  });

  it('are in memory where nothing can be kept', async () => {
    const photos = new PhotoStore(null);
    const key = await photos.put(new Blob(['abc'], { type: 'image/jpeg' }));
    expect((await photos.get(key))?.type).toBe('image/jpeg');
    expect(await photos.inUse()).toEqual(new Set([abc]));
    expect(await photos.clearUnused()).toBe(0);
  });
});

describe('an older store', () => {
  it('keeps its jobs when photos and history come beside them', async () => {
    const old = await openDB('lodeplan', 2, {
      upgrade(database) {
        database.createObjectStore('jobs', { keyPath: 'id' });
        database.createObjectStore('notes');
        database.createObjectStore('rack', { keyPath: 'key' });
      },
    });
    await old.put('jobs', entry('J', '{}'));
    old.close();
    const store = await JobStore.open();
    expect((await store.read('J'))?.text).toBe('{}');
  });
});
