import type { TaskKind } from '../job/programme-schema';
import type { WorkCalendar } from './calendar';
import type { NetworkLink, NetworkTask } from './network';

/** What happens on a day: work of the crew, or an event without duration. */
export type ProgrammeKind = TaskKind | 'magnets' | 'writing' | 'cured' | 'handover';

/** A task before it has dates. */
export interface DraftTask extends NetworkTask {
  readonly id: string;
  readonly kind: ProgrammeKind;
  /** In a few words, without the zone. */
  readonly name: string;
  /** The layer of the zone that is laid, from 0 at the wall, and which coat of it, from 1. */
  readonly uses?: { readonly layer: number; readonly coat: number };
  /** Ids; undefined where it concerns the whole job. */
  readonly wall?: string;
  readonly zone?: string;
}

export interface DraftLink extends NetworkLink {
  /** What the wait is for; undefined: nothing to wait for. */
  readonly wait?: 'dry' | 'harden' | 'cure';
}

/** A network while it is being put together. */
export interface Draft {
  readonly tasks: DraftTask[];
  readonly links: DraftLink[];
  readonly calendar: WorkCalendar;
}
