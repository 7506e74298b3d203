import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { EditingRight } from '../../../web/keeping/editing-right';

type Held = () => Promise<void> | undefined;

/** As much of Web Locks (W3C draft, "request a lock") as one exclusive lock a name needs: queue, abort, steal. */
class Locks {
  readonly #held = new Map<string, { steal: () => void }>();
  readonly #waiting: { name: string; grant: () => void }[] = [];

  request(name: string, { steal, signal }: { steal?: boolean; signal?: AbortSignal }, held: Held) {
    return new Promise<void>((resolve, reject) => {
      const grant = () => {
        const entry = { steal: () => reject(new DOMException('', 'AbortError')) };
        this.#held.set(name, entry);
        void Promise.resolve(held()).then(() => {
          if (this.#held.get(name) === entry) this.#letGo(name);
          resolve();
        });
      };
      if (steal) this.#held.get(name)?.steal();
      else if (this.#held.has(name)) {
        const entry = { name, grant };
        this.#waiting.push(entry);
        signal?.addEventListener('abort', () => {
          this.#waiting.splice(this.#waiting.indexOf(entry), 1);
          reject(new DOMException('', 'AbortError'));
        });
        return;
      }
      grant();
    });
  }

  query() {
    return Promise.resolve({ held: [...this.#held.keys()].map((name) => ({ name })) });
  }

  #letGo(name: string): void {
    this.#held.delete(name);
    const next = this.#waiting.findIndex((entry) => entry.name === name);
    if (next >= 0) this.#waiting.splice(next, 1)[0]!.grant();
  }
}

/** Jobs of this test alone: tabs of the tests before still listen. */
let J = '';
let K = '';
let tests = 0;

function tab(key: string, handOver: () => Promise<string | null> = () => Promise.resolve(null)) {
  const told: string[] = [];
  const right = new EditingRight(key + J, {
    handOver: () => {
      told.push('asked');
      return handOver();
    },
    gained: () => told.push('gained'),
    lost: () => told.push('lost'),
  });
  return { right, told };
}

beforeEach(() => {
  [J, K] = [`J${++tests}`, `K${tests}`];
  vi.stubGlobal('navigator', { locks: new Locks() });
});
afterEach(() => vi.unstubAllGlobals());

describe('EditingRight', () => {
  it('is one tab’s, and the next one’s when that tab opens another job', async () => {
    const [one, two] = [tab('one'), tab('two')];
    expect(await one.right.claim(J)).toBe(true);
    expect(await two.right.claim(J)).toBe(false);
    expect([one.right.isHeld, two.right.isHeld]).toEqual([true, false]);
    expect(await two.right.inUse()).toEqual(new Set([J]));
    expect(await one.right.claim(K)).toBe(true);
    await vi.waitFor(() => expect(two.told).toEqual(['gained']));
    expect(two.right.isHeld).toBe(true);
  });

  it('goes over when asked for, after the other tab has finished, which then waits for it', async () => {
    let finished = false;
    const one = tab('one', async () => {
      await new Promise((resume) => setTimeout(resume, 30));
      finished = true;
      return null;
    });
    const two = tab('two');
    await one.right.claim(J);
    await two.right.claim(J);
    expect(await two.right.takeOver()).toBeNull();
    expect(finished).toBe(true);
    expect([one.right.isHeld, two.right.isHeld]).toEqual([false, true]);
    await vi.waitFor(() => expect(one.told).toEqual(['asked', 'lost']));
    await two.right.claim(K);
    await vi.waitFor(() => expect(one.right.isHeld).toBe(true));
    expect(one.told).toEqual(['asked', 'lost', 'gained']);
  });

  it('stays where changes could not be kept, and says why', async () => {
    const one = tab('one', () => Promise.resolve('There is no room.'));
    const two = tab('two');
    await one.right.claim(J);
    await two.right.claim(J);
    expect(await two.right.takeOver()).toBe('There is no room.');
    expect([one.right.isHeld, two.right.isHeld]).toEqual([true, false]);
  });

  it('is taken from a tab that does not answer', async () => {
    const one = tab('one', () => new Promise(() => undefined));
    const two = tab('two');
    await one.right.claim(J);
    await two.right.claim(J);
    expect(await two.right.takeOver()).toBeNull();
    expect(two.right.isHeld).toBe(true);
  });

  it('is everyone’s without Web Locks', async () => {
    vi.stubGlobal('navigator', {});
    const [one, two] = [tab('one'), tab('two')];
    expect(await Promise.all([one.right.claim(J), two.right.claim(J)])).toEqual([true, true]);
    expect(await one.right.takeOver()).toBeNull();
  });
});
