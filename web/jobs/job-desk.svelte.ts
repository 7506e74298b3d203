import type { Finding } from '../../core/finding';
import { longestFile } from '../../core/job/limits';
import { readJob } from '../../core/job/read';
import type { Job } from '../../core/job/schema';
import { writeJob } from '../../core/job/write';
import { download, fileName } from '../documents/download';
import type { OpenJob } from '../job/open-job.svelte';
import type { Keeping } from '../keeping/keeping.svelte';
import { goTo } from './start-job';

export type DialogName = 'details' | 'new' | 'jobs' | 'wall';

/** What happens to whole jobs: new, open, save, and the dialogs for them. */
export class JobDesk {
  dialog = $state.raw<DialogName | null>(null);
  /** Faults of the last file that could not be opened. */
  faults = $state.raw<readonly Finding[] | null>(null);

  readonly #open: OpenJob;
  readonly #keeping: Keeping;

  constructor(open: OpenJob, keeping: Keeping) {
    this.#open = open;
    this.#keeping = keeping;
    keeping.onChangedElsewhere((job) => open.apply('Change made in another tab', () => job));
  }

  close(): void {
    this.dialog = null;
    this.faults = null;
  }

  /**
   * The present job stays in the list; the new one takes its place on the screen. Where nothing can be kept, Undo
   * brings the present one back.
   */
  async begin(job: Job): Promise<void> {
    if (this.#keeping.state === 'unavailable') {
      this.#open.apply(`Open “${job.name}”`, () => job);
      this.#open.selection = null;
    } else {
      await this.#keeping.begin();
      this.#open.open(job);
    }
    this.close();
  }

  async openKept(id: string): Promise<boolean> {
    const kept = await this.#keeping.open(id);
    if (!kept) return false;
    this.#open.open(kept.job);
    goTo(this.#open, kept.place.wallId, kept.place.station);
    this.close();
    return true;
  }

  pickFile(): void {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,application/json';
    input.onchange = () => void this.take(input.files?.[0]);
    input.click();
  }

  /** A sound file opens as a job of its own; a bad one only shows its faults. */
  async take(file: File | undefined): Promise<void> {
    if (!file) return;
    if (file.size > longestFile) {
      this.faults = [tooLong(file)];
      return;
    }
    const { job, findings } = readJob(await file.text());
    if (job) await this.begin(job);
    else this.faults = findings;
  }

  saveFile(): void {
    const { job } = this.#open;
    download(new Blob([writeJob(job)], { type: 'application/json' }), `${fileName(job.name)}.json`);
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

function tooLong(file: File): Finding {
  return {
    level: 'error',
    code: 'too-long',
    text: `“${file.name}” is ${Math.round(file.size / 1e6)} MB long; a job file has at most ${longestFile / 1e6} MB, so this is another kind of file.`,
  };
}
