import { findKind, isSameName } from '../../core/job/fitting-kinds';
import type { OwnKind } from '../../core/job/schema';
import type { JobStore } from './store';

/**
 * Kinds of fitting that are kept on this device for the next job, beside the jobs. A job holds its own kinds itself; these
 * are only offered. Where nothing can be kept they stay until the page is left.
 */
export class KeptKinds {
  list = $state.raw<readonly OwnKind[]>([]);

  #store: JobStore | null;
  readonly #channel = new BroadcastChannel('lodeplan-kinds');

  constructor(store: JobStore | null) {
    this.#store = store;
    // Storage that cannot be read any more is told of by the job that is kept in it; what is offered stays.
    this.#channel.onmessage = () => void this.refresh().catch(() => undefined);
  }

  /** The browser gives storage after all: what was only in memory goes there. */
  async attach(store: JobStore): Promise<void> {
    this.#store = store;
    const kinds = this.list;
    await this.#change((kept) => [...kept, ...kinds.filter(({ name }) => !findKind(kept, name))]);
  }

  async refresh(): Promise<void> {
    if (this.#store) this.list = await this.#store.kinds();
  }

  /** Kept under its name; one that was kept under `before` gives way to it. */
  async put(kind: OwnKind, before = kind.name): Promise<void> {
    await this.#change((kept) => {
      const at = kept.findIndex(({ name }) => isSameName(name, before));
      const others = kept.filter(({ name }) => !isSameName(name, before) && !isSameName(name, kind.name));
      return at < 0 ? [...others, kind] : [...others.slice(0, at), kind, ...others.slice(at)];
    });
  }

  async forget(forgotten: string): Promise<void> {
    await this.#change((kept) => kept.filter(({ name }) => !isSameName(name, forgotten)));
  }

  async #change(change: (kept: readonly OwnKind[]) => readonly OwnKind[]): Promise<void> {
    if (!this.#store) {
      this.list = change(this.list);
      return;
    }
    this.list = await this.#store.changeKinds(change);
    this.#channel.postMessage('changed');
  }
}
