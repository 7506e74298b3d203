import type { HistoryWrite } from './history-log';
import type { JobToKeep } from './kept';

/** A write that the page did not come to finish, made good when it is loaded again. */
export interface UnfinishedWrite {
  readonly job: JobToKeep;
  readonly history: { readonly write: HistoryWrite; readonly version: number };
  /** The job must lie on the device with one of these stamps; null: not at all. */
  readonly seen: readonly (string | null)[];
}

const unfinished = 'lodeplan-unfinished-write';

/** Called when the page is left: unlike the database, this store takes it before the page is gone. */
export function leaveUnfinished(write: UnfinishedWrite | null): void {
  try {
    if (write) sessionStorage.setItem(unfinished, JSON.stringify(write));
    else sessionStorage.removeItem(unfinished);
  } catch {
    // Too large, or no session storage: then what the database has by now is what is kept.
  }
}

/** What this tab left, once. */
export function takeUnfinished(): UnfinishedWrite | null {
  try {
    const text = sessionStorage.getItem(unfinished);
    sessionStorage.removeItem(unfinished);
    return text === null ? null : (JSON.parse(text) as UnfinishedWrite);
  } catch {
    return null;
  }
}
