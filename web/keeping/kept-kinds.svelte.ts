import { findKind, isSameName } from '../../core/job/kind-names';
import type { NamedKind } from '../../core/job/kind-names';
import type { KindList } from './kind-lists';
import type { JobStore } from './store';

/**
 * Kinds of the user's own, of fittings or of what hangs, that are kept on this device for the next job, beside the jobs. A
 * job holds its own kinds itself; these are only offered. Where nothing can be kept they stay until the page is left.
 */
export class KeptKinds<K extends NamedKind> {
  list = $state.raw<readonly K[]>([]);

  #store: JobStore | null;
  readonly #of: KindList<K>;
  readonly #channel: BroadcastChannel;

  constructor(store: JobStore | null, of: KindList<K>) {
    this.#store = store;
    this.#of = of;
    this.#channel = new BroadcastChannel(`lodeplan-${of.key}`);
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
    if (this.#store) this.list = await this.#store.kinds(this.#of);
  }

  /** Kept under its name; one that was kept under `before` gives way to it. */
  async put(kind: K, before = kind.name): Promise<void> {
    await this.#change((kept) => {
      const at = kept.findIndex(({ name }) => isSameName(name, before));
      const others = kept.filter(({ name }) => !isSameName(name, before) && !isSameName(name, kind.name));
      return at < 0 ? [...others, kind] : [...others.slice(0, at), kind, ...others.slice(at)];
    });
  }

  async forget(forgotten: string): Promise<void> {
    await this.#change((kept) => kept.filter(({ name }) => !isSameName(name, forgotten)));
  }

  async #change(change: (kept: readonly K[]) => readonly K[]): Promise<void> {
    if (!this.#store) {
      this.list = change(this.list);
      return;
    }
    this.list = await this.#store.changeKinds(this.#of, change);
    this.#channel.postMessage('changed');
  }
}
