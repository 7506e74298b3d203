import type { Finding } from '../../core/finding';
import { longestFile } from '../../core/job/limits';
import type { Job } from '../../core/job/schema';
import { issueRevision, type Issue } from '../../core/run/issue-revision';
import type { WorkedOut } from '../../core/worked-out';
import type { OpenJob } from '../job/open-job.svelte';
import { bookRevision } from '../keeping/book-revision';
import type { Keeping, Opened } from '../keeping/keeping.svelte';
import { freshKey } from '../keeping/store';
import { readJobFile } from '../photo/job-file';
import { canPick, pickToOpen } from './disk-file';
import { saveJob, type SaveWay } from './save-file';
import { goTo, recall } from './start-job';

export type DialogName =
  'details' | 'new' | 'jobs' | 'budget' | 'wall' | 'issue' | 'rack' | 'commands' | 'alternatives' | 'changes';

/** What happens to whole jobs: new, open, save, and the dialogs for them. */
export class JobDesk {
  dialog = $state.raw<DialogName | null>(null);
  /** Faults of the last file that could not be opened. */
  faults = $state.raw<readonly Finding[] | null>(null);

  /** The job's file, which something else has changed since: asked before it is written over. */
  changedFile = $state.raw<string | null>(null);
  /** What was done and needs no answer. */
  told = $state.raw<string | null>(null);

  readonly #open: OpenJob;
  readonly #keeping: Keeping;

  constructor(open: OpenJob, keeping: Keeping) {
    this.#open = open;
    this.#keeping = keeping;
    open.whyClosed = () => (keeping.following ? whyClosed : null);
    keeping.screen = {
      follow: (job) => open.follow(job),
      goOnWith: (opened) => this.#goOnWith(opened),
      takeChange: (job) => this.#takeChange(job),
      putDown: () => open.cancel(),
    };
  }

  close(): void {
    this.dialog = null;
    this.faults = null;
    this.changedFile = null;
  }

  /**
   * The present job stays in the list; the new one takes its place on the screen. Where nothing can be kept, Undo
   * brings the present one back.
   */
  async begin(job: Job): Promise<void> {
    await this.#keeping.begin();
    if (this.#keeping.state === 'unavailable') {
      this.#open.apply(`Open “${job.name}”`, () => job);
      this.#open.selection = null;
    } else {
      this.#open.open(job);
    }
    this.close();
  }

  async openKept(id: string): Promise<boolean> {
    const kept = await this.#keeping.open(id);
    if (!kept) return false;
    this.#open.open(kept.job);
    recall(this.#open, kept);
    goTo(this.#open, kept.place.wallId, kept.place.station);
    this.close();
    return true;
  }

  /** A file that the browser lets this page write again is the one that Save file goes to from then on. */
  async pickFile(): Promise<void> {
    if (canPick()) {
      const handle = await pickToOpen();
      if (handle) await this.take(await handle.getFile(), handle);
      return;
    }
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,application/json';
    input.onchange = () => void this.take(input.files?.[0]);
    input.click();
  }

  /** A sound file opens as a job of its own; a bad one only shows its faults. */
  async take(file: File | undefined, handle?: FileSystemFileHandle): Promise<void> {
    if (!file) return;
    if (file.size > longestFile) {
      this.faults = [tooLong(file)];
      return;
    }
    const { job, findings, said } = await readJobFile(await file.text(), this.#keeping.photos);
    if (!job) this.faults = findings;
    else {
      await this.begin(job);
      const { lastModified, size } = file;
      if (handle) await this.#keeping.files.remember(this.#keeping.id, { handle, lastModified, size });
    }
    if (said) this.#open.refused = said;
  }

  async saveFile(way: SaveWay = 'same'): Promise<void> {
    this.changedFile = null;
    this.told = null;
    const saved = await saveJob(this.#open.job, this.#keeping, way);
    if (saved.kind === 'asks') this.changedFile = saved.file;
    else if (saved.kind === 'warned') this.#open.refused = saved.said;
    else if (saved.kind === 'saved') this.told = saved.said;
  }

  /**
   * Issues the plan on the screen: the record goes into the job, rack pieces are booked out and kept offcuts in. No undo
   * takes that back; changes made before can still be undone, in the job that goes on.
   *
   * @param isSteelCut whether steel was cut to the revision before
   * @returns what has to be told or why nothing was issued
   */
  async issue(
    worked: WorkedOut,
    issue: Issue,
    isSteelCut: boolean,
  ): Promise<{ fault: string } | { promised: readonly string[] }> {
    const closed = this.#open.whyClosed();
    if (closed !== null) return { fault: closed };
    const place = { wallId: this.#open.wall?.id ?? '', station: this.#open.station };
    let promised: readonly string[] = [];
    const outcome = await this.#keeping.issue(place, (pieces, holders) => {
      const takenMarks = pieces.map(({ id }) => id);
      const job = issueRevision(worked.job, worked, { ...issue, takenMarks });
      const jobKey = this.#keeping.id;
      const change = bookRevision(pieces, holders, { jobKey, job, isSteelCut, freshKey });
      if ('fault' in change) return change;
      promised = change.promised;
      return { job, ...change };
    });
    if ('fault' in outcome) return outcome;
    this.#open.goOnFrom(outcome.job, carryRevisions(outcome.job));
    return { promised };
  }

  #goOnWith(opened: Opened): void {
    if (opened.job !== this.#open.job) this.#open.follow(opened.job);
    recall(this.#open, opened);
  }

  /** A revision that another tab has issued stays; its other changes can be undone here. */
  #takeChange(job: Job): void {
    const open = this.#open;
    if (job.revisions.length > open.job.revisions.length) {
      const carry = carryRevisions(job);
      open.goOnFrom(carry(open.job), carry);
    }
    open.apply('Change made in another tab', () => job);
  }

  letFileOver(event: DragEvent): void {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
  }

  takeDropped(event: DragEvent): void {
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    event.preventDefault();
    void this.take(file);
  }
}

const whyClosed =
  'This job is being changed in another tab, so nothing can be changed here; choose “Change it here” to go on in this tab.';

/** What issuing changes in a job, for every earlier state of it. */
function carryRevisions({ revisions, revision, date }: Job): (earlier: Job) => Job {
  return (earlier) => ({ ...earlier, revisions, revision, date });
}

function tooLong(file: File): Finding {
  return {
    level: 'error',
    code: 'too-long',
    text: `“${file.name}” is ${Math.round(file.size / 1e6)} MB long; a job file has at most ${longestFile / 1e6} MB, so this is another kind of file.`,
  };
}
