import type { ConfirmedHung } from '../../core/holding/confirm-hung';
import type { HoldingZone } from '../../core/holding/zone-ground';
import type { Job, Wall } from '../../core/job/schema';

/** To the worker that solves the field behind an item's magnets; one question a worker, which ends with its answer. */
export interface ConfirmRequest {
  readonly job: Job;
  readonly wall: Wall;
  readonly zones: readonly HoldingZone[];
  readonly id: string;
}

/** From it: null if the wall has no such item. */
export type ConfirmReply = { readonly found: ConfirmedHung | null } | { readonly fault: string };
