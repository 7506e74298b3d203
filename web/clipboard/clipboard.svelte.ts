import { writeObjects } from '../../core/job/objects-text';
import {
  isObjectsText,
  readObjects,
  type LineFault,
  type ReadObjects,
} from '../../core/job/read-objects-text';
import { beyondWall, chosenWords, takeOutChosen, type Done } from '../arrange/arrange';
import { nameOfSeveral } from '../job/changes/several';
import { pasteObjects } from '../job/changes/paste';
import type { OpenJob } from '../job/open-job.svelte';

/** What has to be asked before anything is pasted or copied. */
export type Question =
  /** Some of it could not be read. */
  | { readonly kind: 'faults'; readonly read: ReadObjects; readonly text: string }
  /** It looks like rows of a spreadsheet. */
  | { readonly kind: 'readings'; readonly text: string }
  /** The browser does not let the clipboard be written or read: by hand, then. */
  | { readonly kind: 'take'; readonly text: string }
  | { readonly kind: 'give' };

/** Copies what is chosen as text and pastes such text, on the wall that is shown. */
export class Clipboard {
  readonly #open: OpenJob;
  question = $state.raw<Question | null>(null);

  constructor(open: OpenJob) {
    this.#open = open;
  }

  /** Whether there is something to copy. */
  get text(): string | null {
    const { job, wall, chosen } = this.#open;
    return wall && chosen.refs.length > 0 ? writeObjects(job, wall, chosen.refs) : null;
  }

  copied(): void {
    this.#open.chosen.say(`${chosenWords(this.#open)} copied as text.`);
  }

  cut(): void {
    const { words }: Done = takeOutChosen(this.#open);
    this.#open.chosen.say(`Copied as text. ${words}`);
  }

  /** Text from wherever it comes: objects, else rows of readings. */
  paste(text: string): void {
    const { wall, chosen } = this.#open;
    if (!wall) return;
    if (!isObjectsText(text)) {
      if (text.trim() === '') chosen.say('The clipboard holds no text to paste.');
      else this.question = { kind: 'readings', text };
      return;
    }
    const read = readObjects(text);
    if (read.faults.length > 0) this.question = { kind: 'faults', read, text };
    else this.putIn(read);
  }

  /** @returns why it was refused, or null */
  putIn({ objects, kinds }: ReadObjects): string | null {
    const { job, wall, chosen } = this.#open;
    if (!wall) return 'There is no wall to paste on.';
    const paste = pasteObjects(job, wall, objects, kinds);
    const refused = this.#open.apply(paste.name, paste.change);
    if (refused) return refused;
    chosen.set(paste.pasted);
    const out = beyondWall(this.#open.wall!, paste.pasted);
    const outWords = `${nameOfSeveral(this.#open.wall, out)} ${out.length === 1 ? 'lies' : 'lie'} beyond this wall.`;
    const pasted = `${nameOfSeveral(this.#open.wall, paste.pasted)} pasted.`;
    chosen.say([pasted, ...(out.length > 0 ? [outWords] : []), ...paste.notes].join(' '));
    return null;
  }

  /** By command: the browser may ask first, or refuse. */
  async copyByCommand(takes = false): Promise<void> {
    const { text } = this;
    if (text === null) return;
    try {
      await navigator.clipboard.writeText(text);
      if (takes) this.cut();
      else this.copied();
    } catch {
      this.question = { kind: 'take', text };
    }
  }

  async pasteByCommand(): Promise<void> {
    try {
      this.paste(await navigator.clipboard.readText());
    } catch {
      this.question = { kind: 'give' };
    }
  }
}

/** The first faults in words; the rest is counted. */
export function faultWords(faults: readonly LineFault[], most: number): readonly string[] {
  const words = faults.slice(0, most).map(({ line, text }) => `Line ${line}: ${text}`);
  return faults.length > most ? [...words, `and ${faults.length - most} more`] : words;
}
