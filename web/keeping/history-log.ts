import type { DoneChange } from '../job/open-job.svelte';
import { changeAsText } from './history-text';

/** Changes that can be undone, oldest first, and those undone, the next to be made again last. */
export interface History {
  readonly done: readonly DoneChange[];
  readonly undone: readonly DoneChange[];
}

/** Where the history of a job lies: numbers from `first` up to `end`; those below `done` led to the job. */
export interface HistoryPlace {
  readonly first: number;
  readonly done: number;
  readonly end: number;
}

/** What is to be written so that the history lies there; whatever lies outside its numbers goes. */
export interface HistoryWrite extends HistoryPlace {
  readonly put: readonly { readonly number: number; readonly text: string }[];
}

interface Lying {
  readonly change: DoneChange;
  readonly size: number;
}

/** Characters of all texts together, beyond which the oldest go: some hundreds of changes of a large wall. */
export const mostHistory = 4_000_000;

/**
 * What of a job's history lies on the device. It only ever says what to add and what to leave off, so that a long
 * history is not written again at every change.
 */
export class HistoryLog {
  #lying: readonly Lying[] = [];
  #first = 0;
  readonly #most: number;

  constructor(most = mostHistory) {
    this.#most = most;
  }

  /** What lies there was read from there; `sizes` are the lengths of its texts. */
  static read(history: History, first: number, sizes: readonly number[], most?: number): HistoryLog {
    const log = new HistoryLog(most);
    log.#first = first;
    log.#lying = inOrder(history).map((change, i) => ({ change, size: sizes[i] ?? 0 }));
    return log;
  }

  /** @returns what to write, and what to call once it lies there */
  next(history: History): { write: HistoryWrite; written: () => void } {
    const changes = inOrder(history);
    // What was dropped as too old is still in memory, before the first that lies there.
    const from = Math.max(0, this.#lying.length > 0 ? changes.indexOf(this.#lying[0]!.change) : 0);
    let same = 0;
    while (same < this.#lying.length && this.#lying[same]!.change === changes[from + same]) same++;

    const texts = changes.slice(from + same).map(changeAsText);
    const lying = [
      ...this.#lying.slice(0, same),
      ...texts.map((text, i) => ({ change: changes[from + same + i]!, size: text.length })),
    ];
    const done = history.done.length - from;
    const [oldest, past] = within(this.#most, lying, done);
    const start = this.#first;
    return {
      write: {
        first: start + oldest,
        done: start + Math.max(done, oldest),
        end: start + past,
        put: texts
          .map((text, i) => ({ number: start + same + i, text }))
          .filter(({ number }) => number >= start + oldest && number < start + past),
      },
      written: () => {
        this.#first = start + oldest;
        this.#lying = lying.slice(oldest, past);
      },
    };
  }
}

function inOrder({ done, undone }: History): DoneChange[] {
  return [...done, ...undone.toReversed()];
}

/** From which change to which there is room: the oldest go first, then what was undone longest ago. */
function within(most: number, lying: readonly Lying[], done: number): [from: number, to: number] {
  let size = lying.reduce((sum, one) => sum + one.size, 0);
  let [from, to] = [0, lying.length];
  while (size > most && from < done) size -= lying[from++]!.size;
  while (size > most && to > from) size -= lying[--to]!.size;
  return [from, to];
}
