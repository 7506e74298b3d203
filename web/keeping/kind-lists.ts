import type { HungKind } from '../../core/job/hung-schema';
import { readHungKinds, readKinds } from '../../core/job/read-kinds';
import type { OwnKind } from '../../core/job/schema';

/** A list of kinds that is kept beside the jobs: its key, and how its text is read. */
export interface KindList<K> {
  readonly key: string;
  /** Never throws: what is no sound kind is left out. */
  readonly read: (text: string | undefined) => readonly K[];
}

export const fittingKindList: KindList<OwnKind> = { key: 'fitting-kinds', read: readKinds };
export const hungKindList: KindList<HungKind> = { key: 'hung-kinds', read: readHungKinds };
