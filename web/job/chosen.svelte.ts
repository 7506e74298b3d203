import { sameObject } from '../../core/job/several';
import type { Wall } from '../../core/job/schema';
import { findObject, type ObjectRef } from '../../core/job/shape';
import type { Selection } from './open-job.svelte';

interface Holder {
  readonly wall: Wall | undefined;
  readonly version: number;
  selection: Selection;
}

/**
 * All the objects that are chosen: the first one is the selection that row, drawing and findings share, the others stand
 * beside it here. They last for as long as the first one does: whoever chooses something else by `selection` alone lets
 * go of them.
 */
export class Chosen {
  readonly #holder: Holder;
  #beside = $state.raw<{ readonly first: ObjectRef; readonly others: readonly ObjectRef[] } | null>(null);
  #said = $state.raw<{ words: string; version: number; selection: Selection } | null>(null);
  /** Each tap or click adds an object or takes it away: for a hand without keys. */
  adding = $state.raw(false);

  readonly refs: readonly ObjectRef[] = $derived.by(() => {
    const { wall, selection } = this.#holder;
    if (!wall || !selection || selection.kind === 'panel' || selection.kind === 'vertex') return nothing;
    const first = { kind: selection.kind, id: selection.id };
    const beside = this.#beside;
    const others = beside && sameObject(beside.first, first) ? beside.others : nothing;
    return [first, ...others].filter((ref) => findObject(wall, ref));
  });

  constructor(holder: Holder) {
    this.#holder = holder;
  }

  /** What a command has done or why it has not, until the job or the selection is another. */
  get said(): string | null {
    const { version, selection } = this.#holder;
    const said = this.#said;
    return said && said.version === version && said.selection === selection ? said.words : null;
  }

  say(words: string): void {
    const { version, selection } = this.#holder;
    this.#said = { words, version, selection };
  }

  /** More than one. */
  get isSeveral(): boolean {
    return this.refs.length > 1;
  }

  has(ref: ObjectRef): boolean {
    return this.refs.some((other) => sameObject(other, ref));
  }

  /** These and no others; the first becomes the selection. */
  set(refs: readonly ObjectRef[]): void {
    const [first, ...others] = refs;
    this.#holder.selection = first ?? null;
    this.#beside = first && others.length > 0 ? { first, others } : null;
  }

  /** Adds an object, or takes it away. */
  toggle(ref: ObjectRef): void {
    const others = this.refs.filter((other) => !sameObject(other, ref));
    this.set(others.length < this.refs.length ? others : [...this.refs, ref]);
  }

  add(refs: readonly ObjectRef[]): void {
    this.set([...this.refs, ...refs.filter((ref) => !this.has(ref))]);
  }
}

const nothing: readonly ObjectRef[] = [];
