import { isSame } from '../../core/job/differences/difference';
import { findKind, isSameName, type NamedKind } from '../../core/job/kind-names';
import type { Job } from '../../core/job/schema';
import type { NamedChange } from '../job/changes/named-change';
import type { OpenJob } from '../job/open-job.svelte';
import type { KeptKinds } from '../keeping/kept-kinds.svelte';

/** How a job's own kinds of one sort, of fittings or of what hangs, are changed. */
export interface KindChanges<K extends NamedKind> {
  readonly ownOf: (job: Job) => readonly K[];
  /** Why a kind cannot be called so in a job, in a sentence, or null. */
  readonly faultOfNew: (job: Job, name: string) => string | null;
  /** @param like the kind that it takes its figures from, if there is one */
  readonly make: (name: string, like: K | undefined) => NamedChange;
  readonly set: (name: string, patch: Partial<K>) => NamedChange;
  /** Refused, in a sentence, while something is of that kind. */
  readonly takeOut: (job: Job, name: string) => NamedChange | { readonly fault: string };
}

/**
 * The user's own kinds of one sort: those of the job, and those that this device keeps from other jobs. What is made here
 * is in the job and kept on the device; what is only kept comes into the job with the first thing of it.
 */
export class KindDesk<K extends NamedKind> {
  /** Whether the table of kinds is shown. */
  isShown = $state.raw(false);
  readonly #open: OpenJob;
  readonly #kept: KeptKinds<K>;
  readonly #changes: KindChanges<K>;

  readonly own: readonly K[] = $derived.by(() => this.#changes.ownOf(this.#open.job));
  /** Kept on this device and not in the job. */
  readonly elsewhere: readonly K[] = $derived.by(() =>
    this.#kept.list.filter(({ name }) => !findKind(this.own, name)),
  );
  /** All that can be put in. */
  readonly offered: readonly K[] = $derived.by(() => [...this.own, ...this.elsewhere]);

  constructor(open: OpenJob, kept: KeptKinds<K>, changes: KindChanges<K>) {
    this.#open = open;
    this.#kept = kept;
    this.#changes = changes;
  }

  /** Whether the next job is offered it with just these figures. */
  isKept(kind: K): boolean {
    const kept = findKind(this.#kept.list, kind.name);
    return kept !== undefined && isAlike(kept, kind);
  }

  /** @returns why it was refused, or null */
  add(name: string, like?: K): string | null {
    const refused =
      this.#changes.faultOfNew(this.#open.job, name) ?? this.#make(this.#changes.make(name, like));
    const kind = findKind(this.own, name.trim());
    if (!refused && kind) this.keep(kind);
    return refused;
  }

  /** What this device keeps of the kind follows; of a kind from elsewhere it keeps nothing until it is told to. */
  set(kind: K, patch: Partial<K>): string | null {
    const wasKept = this.isKept(kind);
    const refused = this.#make(this.#changes.set(kind.name, patch));
    const changed = findKind(this.own, patch.name ?? kind.name);
    if (!refused && wasKept && changed) void this.#kept.put(changed, kind.name);
    return refused;
  }

  takeOut(kind: K): string | null {
    return this.#make(this.#changes.takeOut(this.#open.job, kind.name));
  }

  keep(kind: K): void {
    void this.#kept.put(kind);
  }

  forget(kind: K): void {
    void this.#kept.forget(kind.name);
  }

  #make(change: NamedChange | { readonly fault: string }): string | null {
    if ('fault' in change) return change.fault;
    const refused = this.#open.apply(change.name, change.change);
    this.#open.refused = null;
    return refused;
  }
}

function isAlike<K extends NamedKind>(a: K, b: K): boolean {
  return isSameName(a.name, b.name) && isSame({ ...a, name: '' }, { ...b, name: '' }, 0);
}
