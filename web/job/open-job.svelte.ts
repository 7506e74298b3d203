import { keepInStep } from '../../core/job/keep-in-step';
import type { LengthUnits } from '../../core/lengths';
import type { Job } from '../../core/job/schema';
import type { HoleRef } from '../../core/job/holes';
import type { MarkingRef } from '../../core/job/markings';
import { findObject, findWall, type ObjectRef } from '../../core/job/shape';
import { Paced } from '../look/paced.svelte';
import { Chosen } from './chosen.svelte';
import { faultOfLock } from './fault-of-lock';

/** A finished change: its name as the user reads it after "Undo", and the job before and after. */
export interface DoneChange {
  readonly name: string;
  readonly before: Job;
  readonly after: Job;
}

/** What row and drawing have selected together. `panel` holds a mark; `vertex` counts on the wall's outline. */
export type Selection =
  | ObjectRef
  | { readonly kind: 'panel'; readonly id: string }
  | { readonly kind: 'vertex'; readonly id: string }
  | null;

/** Something chosen by hand in a zone of the wall on the screen. */
export interface HandChoiceRef {
  readonly zone: string;
  readonly id: string;
}

export type StationName = 'survey' | 'zones' | 'panels' | 'hanging' | 'price' | 'drawings';

/**
 * The one job on the screen. It changes only by `apply` (one finished change), or by a gesture: `preview` as
 * often as the hand moves, then `commit` (one entry to undo) or `cancel` (exactly as before).
 */
export class OpenJob {
  #job = $state.raw<Job>() as Job;
  #done = $state.raw<readonly DoneChange[]>([]);
  #undone = $state.raw<readonly DoneChange[]>([]);
  #gestureStart = $state.raw<Job | null>(null);
  #wallId = $state.raw('');
  /** Counts every change of the job, previews included; results carry the number they belong to. */
  #version = $state.raw(0);

  selection = $state.raw<Selection>(null);
  /** The selection and whatever is chosen beside it. */
  readonly chosen = new Chosen(this);
  /** The hole of the chosen zone that is chosen, too; it counts only while that zone is. */
  hole = $state.raw<HoleRef | null>(null);
  /** Likewise a marking of it. */
  marking = $state.raw<MarkingRef | null>(null);
  /** The choice by hand in the chosen zone that is chosen, too; it counts only while that zone is, at Panels. */
  handChoice = $state.raw<HandChoiceRef | null>(null);
  /** A fixing point that is chosen: see `chosen-fixing-point.ts`. */
  fixingPoint = $state.raw<{ readonly wall: string; readonly id: string } | null>(null);
  /** A stretch with people below that is chosen: see `chosen-people.ts`. */
  people = $state.raw<{ readonly wall: string; readonly id: string } | null>(null);
  station = $state.raw<StationName>('survey');
  /** The part of the schedule that is shown at each station; absent: its first. */
  leaves = $state.raw<Partial<Record<StationName, string>>>({});
  /** Why the last change was not made, in a sentence; null after one that was. */
  refused = $state.raw<string | null>(null);

  /** Why nothing can be changed here at present, in a sentence; null if it can. Everything that changes the job asks. */
  whyClosed: () => string | null = () => null;

  readonly #faultOf: (job: Job) => string | null;
  /** Earlier jobs that were recalled and not yet read: what they are read with. */
  readonly #unread = new WeakMap<Job, (job: Job) => Job | null>();

  /** What lengths are shown and typed in; asked for by every figure on the screen, so it must not change with the job. */
  readonly units: LengthUnits = $derived(this.#job.units ?? 'mm');

  /** Looked into at a pace while a gesture is under way: a whole job is read anew for it. */
  readonly #looked = new Paced(
    () => ({
      job: this.#job,
      version: this.#version,
      fault: this.settled ? null : this.#faultOf(this.#job),
    }),
    () => !this.settled,
  );

  /**
   * @param faultOf why a job could not be saved and opened again, or null; a change that leads to such a job is
   *   refused, so that what is kept can always be read
   */
  constructor(job: Job, faultOf: (job: Job) => string | null = () => null) {
    this.#faultOf = faultOf;
    this.open(job);
  }

  get job(): Job {
    return this.#job;
  }
  get version(): number {
    return this.#version;
  }
  /** False while a gesture is under way: nothing half-done is kept on the device. */
  get settled(): boolean {
    return this.#gestureStart === null;
  }
  /** Why what a gesture has made so far would be refused. */
  get gestureFault(): string | null {
    return this.#looked.value.fault;
  }
  /** What can be worked out: the job, at a pace while a gesture is under way; null while that would be refused. */
  get sound(): { readonly job: Job; readonly version: number } | null {
    return this.gestureFault === null ? this.#looked.value : null;
  }
  /** The job as it was before the gesture under way, or as it is. */
  get startJob(): Job {
    return this.#gestureStart ?? this.#job;
  }
  get undoName(): string | undefined {
    return this.#done.at(-1)?.name;
  }
  get redoName(): string | undefined {
    return this.#undone.at(-1)?.name;
  }
  /** The changes that can be undone, oldest first, and those undone, the next to be made again last. */
  get history(): { readonly done: readonly DoneChange[]; readonly undone: readonly DoneChange[] } {
    return { done: this.#done, undone: this.#undone };
  }
  get wall() {
    return findWall(this.#job, this.#wallId) ?? this.#job.walls[0];
  }
  get selectedObject() {
    const { selection, wall } = this;
    if (!wall || !selection || selection.kind === 'panel' || selection.kind === 'vertex') return undefined;
    return findObject(wall, selection);
  }

  /** Another job takes the place of this one; nothing of the old one can be undone. */
  open(job: Job): void {
    this.#replace(job);
    this.#done = [];
    this.#undone = [];
    this.#gestureStart = null;
    this.#wallId = job.walls[0]?.id ?? '';
    this.selection = null;
    this.refused = null;
  }

  /**
   * Changes of an earlier visit, which led to the job as it was opened.
   *
   * @param read gives a job of that time as it is read today, or null if it cannot be; asked when one is gone back to
   */
  recall({ done, undone }: OpenJob['history'], read: (job: Job) => Job | null): void {
    for (const { before } of done) this.#unread.set(before, read);
    for (const { after } of undone) this.#unread.set(after, read);
    this.#done = done;
    this.#undone = undone;
  }

  /** The job as someone else has changed it takes the place of this one, on the same wall; nothing of it can be undone. */
  follow(job: Job): void {
    this.#gestureStart = null;
    this.#done = [];
    this.#undone = [];
    this.#replace(job);
  }

  /** A part of a station's schedule; who is there sees it at once. */
  showLeaf(station: StationName, leaf: string): void {
    this.leaves = { ...this.leaves, [station]: leaf };
  }

  showWall(id: string): void {
    this.#wallId = id;
    this.selection = null;
  }

  /**
   * One change that can be undone by its name. `merge` joins it to the last one of the same name, as a held
   * arrow key does.
   *
   * @returns why it was refused, or null
   */
  apply(name: string, change: (job: Job) => Job, { merge = false } = {}): string | null {
    this.cancel();
    if (this.#isClosed()) return this.refused;
    const before = this.#job;
    const after = keepInStep(before, change(before));
    this.refused = after === before ? null : (faultOfLock(before, after) ?? this.#faultOf(after));
    if (after === before || this.refused) return this.refused;
    this.#remember(name, before, after, merge);
    this.#replace(after);
    return null;
  }

  /**
   * Goes on with a job that no undo leaves: what it has and the job before had not is carried into every change that can
   * be undone or made again, so that these stay possible without taking it back.
   */
  goOnFrom(job: Job, carry: (earlier: Job) => Job): void {
    this.cancel();
    const carryIn = (earlier: Job): Job => {
      const carried = carry(earlier);
      const read = this.#unread.get(earlier);
      if (read) this.#unread.set(carried, read);
      return carried;
    };
    const carryInto = ({ name, before, after }: DoneChange): DoneChange => ({
      name,
      before: carryIn(before),
      after: carryIn(after),
    });
    this.#done = this.#done.map(carryInto);
    this.#undone = this.#undone.map(carryInto);
    this.#replace(job);
    this.refused = null;
  }

  preview(change: (start: Job) => Job): void {
    if (this.#isClosed()) return;
    this.#gestureStart ??= this.#job;
    this.#replace(keepInStep(this.#gestureStart, change(this.#gestureStart)));
  }

  /** @returns why it was refused, the job being as before the gesture, or null */
  commit(name: string): string | null {
    const before = this.#gestureStart;
    if (!before) return this.#isClosed() ? this.refused : null;
    this.refused = before === this.#job ? null : (faultOfLock(before, this.#job) ?? this.#faultOf(this.#job));
    if (this.refused) {
      this.cancel();
      return this.refused;
    }
    this.#gestureStart = null;
    if (before !== this.#job) this.#remember(name, before, this.#job, false);
    return null;
  }

  cancel(): void {
    if (this.#gestureStart) this.#replace(this.#gestureStart);
    this.#gestureStart = null;
  }

  undo(): void {
    if (this.#gestureStart) return this.cancel();
    const change = this.#done.at(-1);
    if (!change || this.#isClosed()) return;
    const before = this.#read(change.before);
    if (!before) return;
    this.#done = this.#done.slice(0, -1);
    this.#undone = [...this.#undone, change];
    this.#replace(before);
  }

  redo(): void {
    const change = this.#undone.at(-1);
    if (!change || this.#isClosed()) return;
    const after = this.#read(change.after);
    if (!after) return;
    this.#undone = this.#undone.slice(0, -1);
    this.#done = [...this.#done, change];
    this.#replace(after);
  }

  #isClosed(): boolean {
    const why = this.whyClosed();
    if (why !== null) this.refused = why;
    return why !== null;
  }

  #read(job: Job): Job | null {
    const read = this.#unread.get(job);
    const found = read ? read(job) : job;
    if (!found) this.refused = 'The job as it was then can no longer be read, so nothing was changed.';
    return found;
  }

  #remember(name: string, before: Job, after: Job, merge: boolean): void {
    const last = this.#done.at(-1);
    this.#undone = [];
    this.#done =
      merge && last?.name === name
        ? [...this.#done.slice(0, -1), { name, before: last.before, after }]
        : [...this.#done, { name, before, after }];
  }

  #replace(job: Job): void {
    this.#job = job;
    this.#version++;
  }
}
