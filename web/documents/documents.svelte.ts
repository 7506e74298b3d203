import type { LodeplanDocument } from '../../core/drawings/page';
import { noPictures, type Pictures } from '../../core/drawings/pictures';
import { picturesOf } from '../../core/job/photos';
import type { Job, Revision } from '../../core/job/schema';
import type { WorkshopEntry } from '../../core/drawings/workshop/workshop-files';
import type { WorkedOut } from '../../core/worked-out';
import type { OpenJob } from '../job/open-job.svelte';
import type { Results } from '../results/results.svelte';
import { Downloads, loadLists, wordsOf } from './downloads.svelte';
import type { DrawnBeside } from './print-orders';
import { PrintShop } from './print-shop';

const ofThisWall = 'setting-out-';
const alone: DrawnBeside = { alternatives: [], since: undefined };

/** The documents of the plan on the screen: which one is shown, and how they are saved. */
export class Documents {
  /** Composed from `worked`; null until the first time. */
  list = $state.raw<readonly LodeplanDocument[] | null>(null);
  worked = $state.raw<WorkedOut | null>(null);
  /** Drawings for the workshop, of `worked`. */
  workshop = $state.raw<readonly WorkshopEntry[]>([]);
  fault = $state.raw<string | null>(null);
  clientViewShown = $state.raw(false);
  /** The issued revision that is shown instead of the plan on the screen, as its record has it. */
  #issued = $state.raw<{ revision: Revision; worked: WorkedOut } | null>(null);

  /** The wall on the screen and its setting-out sheet go together. */
  #shownName = $state.raw(ofThisWall);
  #pageIndex = $state.raw(0);
  #newest: WorkedOut | null = null;
  #beside: DrawnBeside = alone;
  readonly #shop = new PrintShop();
  readonly #open: OpenJob;

  readonly #picturesFor: (job: Job, ids: Iterable<string>) => Promise<Pictures>;
  /** Of the plan that was composed last. */
  pictures: Pictures = noPictures;
  readonly downloads = new Downloads(this, this.#shop);

  /** @param picturesFor fetches the pictures that markings of a job show */
  constructor(open: OpenJob, picturesFor: (job: Job, ids: Iterable<string>) => Promise<Pictures>) {
    this.#open = open;
    this.#picturesFor = picturesFor;
  }

  get shown(): LodeplanDocument | undefined {
    const wanted =
      this.#shownName === ofThisWall ? `${ofThisWall}${this.#open.wall?.id ?? ''}` : this.#shownName;
    return this.list?.find(({ name }) => name === wanted) ?? this.list?.[0];
  }
  /** From 0; always a page that the shown document has. */
  get pageIndex(): number {
    return Math.max(0, Math.min(this.#pageIndex, (this.shown?.pages.length ?? 1) - 1));
  }
  get clientView(): LodeplanDocument | undefined {
    return this.list?.find(({ name, pages }) => name === 'client-view' && pages.length > 0);
  }

  /** null once another job is open. */
  get issued(): Revision | null {
    const revision = this.#issued?.revision;
    return revision && this.#open.job.revisions.includes(revision) ? revision : null;
  }
  /** What documents are to be made of: the record that is shown, or the plan on the screen. */
  wantedOf(plan: WorkedOut | null): WorkedOut | null {
    return this.issued ? this.#issued!.worked : plan;
  }

  /** Shows the documents of an issued revision, printed from its record; says so in `fault` if it cannot be. */
  async showIssued(revision: Revision): Promise<void> {
    const { readRevision } = await import('../../core/run/read-revision');
    const read = readRevision(revision);
    this.fault = 'fault' in read ? read.fault : null;
    this.#issued = 'worked' in read ? { revision, worked: read.worked } : null;
  }

  /** The revision that the documents are held against: the one issued before what they show. */
  get since(): Revision | undefined {
    const { revisions } = this.#open.job;
    const at = this.issued ? revisions.indexOf(this.issued) : revisions.length;
    return revisions[at - 1];
  }

  showPlan(): void {
    this.#issued = null;
    this.fault = null;
  }

  /** Whether they show the plan that is on the screen, or the record that is shown: only then may they be printed. */
  areOf(results: Results): boolean {
    const { worked, list } = this;
    if (!list?.length || worked !== this.wantedOf(results.worked)) return false;
    return this.issued !== null || results.version === this.#open.version;
  }

  show(name: string, pageIndex = 0): void {
    const wallId = name.startsWith(ofThisWall) ? name.slice(ofThisWall.length) : null;
    if (wallId !== null && wallId !== this.#open.wall?.id) this.#open.showWall(wallId);
    this.#shownName = wallId === null ? name : ofThisWall;
    this.#pageIndex = pageIndex;
  }

  /** Composes the documents anew unless they are of this very plan already; a newer call supersedes. */
  async compose(worked: WorkedOut, beside: DrawnBeside = alone): Promise<void> {
    if (worked === this.#newest && isSameBeside(beside, this.#beside)) return;
    this.#newest = worked;
    this.#beside = beside;
    try {
      const pictures = await this.#picturesFor(worked.job, picturesOf(worked.job));
      const list = await this.#shop.compose(worked, beside, pictures);
      const { workshopEntries } = await loadWorkshopEntries();
      if (worked !== this.#newest || beside !== this.#beside) return;
      this.pictures = pictures;
      this.list = list.filter(({ pages }) => pages.length > 0);
      this.worked = worked;
      this.workshop = workshopEntries(worked);
      this.fault = null;
    } catch (reason) {
      if (worked !== this.#newest || beside !== this.#beside) return;
      this.#newest = null;
      this.fault = `The drawings could not be made: ${wordsOf(reason)}.`;
    }
  }

  /** Loads what documents need while nobody waits: on a site the network may be gone later. */
  makeReady(): void {
    this.#shop.makeReady();
    void Promise.all([loadLists(), loadWorkshopEntries()]).catch(() => undefined);
  }

  /** After a fault: once more, from the start. */
  tryAgain(worked: WorkedOut | null): void {
    this.fault = null;
    this.#newest = null;
    if (worked) void this.compose(worked, this.#beside);
  }
}

const loadWorkshopEntries = () => import('../../core/drawings/workshop/workshop-files');

function isSameBeside(a: DrawnBeside, b: DrawnBeside): boolean {
  return (
    a.since === b.since &&
    a.alternatives.length === b.alternatives.length &&
    a.alternatives.every(
      ({ title, worked }, i) => title === b.alternatives[i]!.title && worked === b.alternatives[i]!.worked,
    )
  );
}
