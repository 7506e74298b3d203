import { createContext } from 'svelte';
import { findKind, isSameName, ownKindsOf } from '../../core/job/fitting-kinds';
import type { OwnKind } from '../../core/job/schema';
import type { NamedChange } from '../job/changes/named-change';
import { addKind, faultOfNewKind, setKindFields, takeOutKind } from '../job/changes/kinds';
import type { OpenJob } from '../job/open-job.svelte';
import type { KeptKinds } from '../keeping/kept-kinds.svelte';

/**
 * The user's own kinds of fitting: those of the job, and those that this device keeps from other jobs. What is made here
 * is in the job and kept on the device; what is only kept comes into the job with the first fitting of it.
 */
export class KindDesk {
  /** Whether the table of kinds is shown. */
  isShown = $state.raw(false);
  readonly #open: OpenJob;
  readonly #kept: KeptKinds;

  readonly own: readonly OwnKind[] = $derived.by(() => ownKindsOf(this.#open.job));
  /** Kept on this device and not in the job. */
  readonly elsewhere: readonly OwnKind[] = $derived.by(() =>
    this.#kept.list.filter(({ name }) => !findKind(this.own, name)),
  );
  /** All that can be put in. */
  readonly offered: readonly OwnKind[] = $derived.by(() => [...this.own, ...this.elsewhere]);

  constructor(open: OpenJob, kept: KeptKinds) {
    this.#open = open;
    this.#kept = kept;
  }

  /** Whether the next job is offered it with just these figures. */
  isKept(kind: OwnKind): boolean {
    const kept = findKind(this.#kept.list, kind.name);
    return kept !== undefined && isAlike(kept, kind);
  }

  /** @returns why it was refused, or null */
  add(name: string): string | null {
    const refused = faultOfNewKind(this.#open.job, name) ?? this.#make(addKind(name));
    const kind = findKind(this.own, name.trim());
    if (!refused && kind) this.keep(kind);
    return refused;
  }

  /** What this device keeps of the kind follows; of a kind from elsewhere it keeps nothing until it is told to. */
  set(kind: OwnKind, patch: Partial<OwnKind>): string | null {
    const wasKept = this.isKept(kind);
    const refused = this.#make(setKindFields(kind.name, patch));
    const changed = findKind(this.own, patch.name ?? kind.name);
    if (!refused && wasKept && changed) void this.#kept.put(changed, kind.name);
    return refused;
  }

  takeOut(kind: OwnKind): string | null {
    return this.#make(takeOutKind(this.#open.job, kind.name));
  }

  keep(kind: OwnKind): void {
    void this.#kept.put(kind);
  }

  forget(kind: OwnKind): void {
    void this.#kept.forget(kind.name);
  }

  #make(change: NamedChange | { readonly fault: string }): string | null {
    if ('fault' in change) return change.fault;
    const refused = this.#open.apply(change.name, change.change);
    this.#open.refused = null;
    return refused;
  }
}

function isAlike(a: OwnKind, b: OwnKind): boolean {
  const fields = (kind: OwnKind) => JSON.stringify(Object.entries(kind).sort());
  return isSameName(a.name, b.name) && fields(a) === fields(b);
}

const [kindsOf, setKinds] = createContext<KindDesk>();
export { kindsOf, setKinds };
