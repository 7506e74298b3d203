import type { DBSchema } from 'idb';
import type { JobPicture } from '../../core/job/picture';
import type { FirmPiece } from './firm-piece';
import type { HistoryPlace } from './history-log';
import type { KeptPhoto } from './photo-store';

/** Where the user was: found again after a reload. */
export interface Place {
  readonly wallId: string;
  readonly station: string;
}

export interface KeptHead {
  readonly id: string;
  readonly name: string;
  readonly walls: number;
  /** Milliseconds since 1970, by a clock that may have been set since; only shown. */
  readonly keptAt: number;
  /** Counts up whenever a job of this browser is kept, whatever the clock says: what they are put in order by. */
  readonly turn?: number;
  /** Deleted from the list, and put back by the same hand until the list is closed. */
  readonly isDeleted?: true;
  readonly picture?: JobPicture;
  /** Characters of its text. */
  readonly size?: number;
  /** Keys of the firm's rack pieces that the job has on its own rack; absent in entries of earlier versions. */
  readonly holds?: readonly string[];
}

/** A job as it lies on the device: its file, and what the list of jobs shows without reading it. */
export interface KeptJob extends KeptHead, Place {
  readonly text: string;
  /** Another one at every write, so that two tabs on one job notice each other. */
  readonly stamp: string;
  /** Where the changes lie that led to this very state; void once `of` is no longer the stamp. */
  readonly history?: HistoryPlace & { readonly of: string; readonly version: number };
}

/** What a tab writes: what the store counts itself it does not know. */
export type JobToKeep = Omit<KeptJob, 'turn' | 'size' | 'history'>;

/** One change that can be undone or made again, as it lies on the device. */
export interface KeptChange {
  /** What differs before and after, as JSON. */
  readonly text: string;
}

export interface KeptFile {
  readonly handle: FileSystemFileHandle;
  /** Of the file when it was last read or written here: it tells whether something else has changed it since. */
  readonly lastModified: number;
  readonly size: number;
}

export interface KeepingSchema extends DBSchema {
  jobs: { key: string; value: KeptJob };
  notes: { key: string; value: string };
  rack: { key: string; value: FirmPiece };
  /** By the SHA-256 of the bytes, in hex. */
  photos: { key: string; value: KeptPhoto };
  /** By job and number, counted up as changes are made. */
  history: { key: [job: string, number: number]; value: KeptChange };
  /** By job: the file on disk that it was opened from or saved to. */
  files: { key: string; value: KeptFile };
}

/** What one issue writes: the job with its record and the rack as it is then, together or not at all. */
export interface IssueWrite {
  readonly job: JobToKeep;
  readonly put: readonly FirmPiece[];
  readonly remove: readonly string[];
}
