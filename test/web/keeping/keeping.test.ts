import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { emptyJob } from '../../../core/job/defaults';
import type { Job } from '../../../core/job/schema';
import { Keeping } from '../../../web/keeping/keeping.svelte';
import { JobStore } from '../../../web/keeping/store';

/** A page of one tab: it can be left, and its session storage stays for the page that is loaded next. */
let hide: () => void = () => undefined;
let stores: JobStore[] = [];
let session = new Map<string, string>();

beforeEach(() => {
  session = new Map();
  stores = [];
  vi.stubGlobal('indexedDB', new IDBFactory());
  vi.stubGlobal('navigator', {});
  vi.stubGlobal('sessionStorage', {
    getItem: (key: string) => session.get(key) ?? null,
    setItem: (key: string, text: string) => void session.set(key, text),
    removeItem: (key: string) => void session.delete(key),
  });
  vi.stubGlobal('addEventListener', (type: string, act: () => void) => {
    if (type === 'pagehide') hide = act;
  });
  const open = JobStore.open.bind(JobStore);
  vi.spyOn(JobStore, 'open').mockImplementation(async () => {
    const store = await open();
    stores.push(store);
    return store;
  });
});

afterEach(() => vi.restoreAllMocks());

/** What is being written still is; nothing else will be. */
function leave(): void {
  hide();
  for (const store of stores) store.close();
}

const place = { wallId: '', station: 'survey' };
const named = (name: string): Job => emptyJob(name);

/** Two changes of a new job: the first is being written, the second waits. */
async function changedTwice() {
  const page = await Keeping.start();
  const [first, second] = [named('Print studio'), named('Type store')];
  const change = { name: 'Name of the job', before: first, after: second };
  await page.begin();
  page.keep(first, place, { done: [], undone: [] });
  await vi.waitFor(() => expect(page.state).toBe('kept'));
  page.keep(named('Never seen'), place, { done: [], undone: [] });
  page.keep(second, place, { done: [change], undone: [] });
  return page;
}

describe('Keeping', () => {
  it('keeps a job and its history, and opens it again', async () => {
    const page = await changedTwice();
    await vi.waitFor(() => expect(page.state).toBe('kept'));
    const opened = await (await Keeping.start()).lastOpen();
    expect(opened?.job.name).toBe('Type store');
    expect(opened?.history.done.map(({ name, before }) => [name, before.name])).toEqual([
      ['Name of the job', 'Print studio'],
    ]);
  });

  it('makes good what the page that was left had not written yet, with its history', async () => {
    await changedTwice();
    leave();
    const opened = await (await Keeping.start()).lastOpen();
    expect(opened?.job.name).toBe('Type store');
    expect(opened?.history.done).toHaveLength(1);
  });

  it('writes over nothing that another tab wrote in the meantime', async () => {
    const page = await changedTwice();
    hide();
    const left = session.get('lodeplan-unfinished-write');
    await vi.waitFor(() => expect(page.state).toBe('kept'));
    page.keep(named('Stair wall'), place, { done: [], undone: [] });
    await vi.waitFor(() => expect(page.state).toBe('kept'));
    session.set('lodeplan-unfinished-write', left!);
    const opened = await (await Keeping.start()).lastOpen();
    expect(opened?.job.name).toBe('Stair wall');
    expect(session.has('lodeplan-unfinished-write')).toBe(false);
  });

  it('leaves nothing behind when all is kept', async () => {
    const page = await changedTwice();
    await vi.waitFor(() => expect(page.state).toBe('kept'));
    leave();
    expect(session.has('lodeplan-unfinished-write')).toBe(false);
  });

  it('says why it keeps nothing where the browser refuses storage, and tries again', async () => {
    const refused = vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('It is switched off.', 'SecurityError');
    });
    const page = await Keeping.start();
    expect(page.state).toBe('unavailable');
    expect(page.message).toContain('Save file');
    refused.mockRestore();
    page.keep(named('Glass partition'), place, { done: [], undone: [] });
    await vi.waitFor(() => expect(page.state).toBe('kept'));
    expect(page.message).toBeNull();
    expect((await (await Keeping.start()).lastOpen())?.job.name).toBe('Glass partition');
  });
});
