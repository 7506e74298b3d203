import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, it } from 'vitest';
import type { OwnKind } from '../../../core/job/schema';
import { KeptKinds } from '../../../web/keeping/kept-kinds.svelte';
import { fittingKindList, hungKindList } from '../../../web/keeping/kind-lists';
import { JobStore } from '../../../web/keeping/store';

const rail: OwnKind = { name: 'Pin rail', width: 900, height: 60, floor: 1500, clearance: 10 };
const hook: OwnKind = { name: 'Hook', round: true, width: 60, floor: 1800, clearance: 4 };

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

describe('own kinds on the device', () => {
  it('are there the next time, changed and renamed in their place, and forgotten', async () => {
    const kinds = new KeptKinds(await JobStore.open(), fittingKindList);
    await kinds.put(rail);
    await kinds.put(hook);
    await kinds.put({ ...rail, name: 'Cork rail', width: 950 }, 'pin rail');
    const again = new KeptKinds(await JobStore.open(), fittingKindList);
    await again.refresh();
    expect(again.list).toEqual([{ ...rail, name: 'Cork rail', width: 950 }, hook]);
    await again.forget('HOOK');
    await kinds.refresh();
    expect(kinds.list.map(({ name }) => name)).toEqual(['Cork rail']);
  });

  it('wait in memory until the browser keeps something, beside what it has', async () => {
    const store = await JobStore.open();
    await new KeptKinds(store, fittingKindList).put(hook);
    const kinds = new KeptKinds(null, fittingKindList);
    await kinds.put(rail);
    expect(kinds.list).toEqual([rail]);
    await kinds.attach(store);
    expect(await store.kinds(fittingKindList)).toEqual([hook, rail]);
  });

  it('of hung items lie beside them under the same names', async () => {
    const store = await JobStore.open();
    const tray = { name: 'Pin rail', item: { width: 300, height: 60, depth: 40, weight: 0.4 }, piece: true };
    await new KeptKinds(store, fittingKindList).put(rail);
    await new KeptKinds(store, hungKindList).put(tray);
    expect(await store.kinds(fittingKindList)).toEqual([rail]);
    expect(await store.kinds(hungKindList)).toEqual([tray]);
  });
});
