import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, it } from 'vitest';
import type { OwnKind } from '../../../core/job/schema';
import { KeptKinds } from '../../../web/keeping/kept-kinds.svelte';
import { JobStore } from '../../../web/keeping/store';

const rail: OwnKind = { name: 'Pin rail', width: 900, height: 60, floor: 1500, clearance: 10 };
const hook: OwnKind = { name: 'Hook', round: true, width: 60, floor: 1800, clearance: 4 };

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

describe('kinds of fitting on the device', () => {
  it('are there the next time, changed and renamed in their place, and forgotten', async () => {
    const kinds = new KeptKinds(await JobStore.open());
    await kinds.put(rail);
    await kinds.put(hook);
    await kinds.put({ ...rail, name: 'Cork rail', width: 950 }, 'pin rail');
    const again = new KeptKinds(await JobStore.open());
    await again.refresh();
    expect(again.list).toEqual([{ ...rail, name: 'Cork rail', width: 950 }, hook]);
    await again.forget('HOOK');
    await kinds.refresh();
    expect(kinds.list.map(({ name }) => name)).toEqual(['Cork rail']);
  });

  it('wait in memory until the browser keeps something, beside what it has', async () => {
    const store = await JobStore.open();
    await new KeptKinds(store).put(hook);
    const kinds = new KeptKinds(null);
    await kinds.put(rail);
    expect(kinds.list).toEqual([rail]);
    await kinds.attach(store);
    expect(await store.kinds()).toEqual([hook, rail]);
  });
});
