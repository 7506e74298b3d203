import type { Job, RackPiece } from '../../core/job/schema';
import { isUsedBy, stateInWords, type FirmPiece } from '../keeping/firm-piece';
import type { FirmRack } from '../keeping/firm-rack.svelte';

/** What becomes of a piece in the plan, and where the firm's rack disagrees with it. */
export function rackWords(
  piece: RackPiece,
  isCutUp: boolean,
  firmPiece: FirmPiece | undefined,
  firm: Pick<FirmRack, 'stateOf' | 'isKept'>,
  job: Job,
): string {
  const inPlan = isCutUp ? 'cut up' : 'stays on the rack';
  if (piece.firm === undefined || !firm.isKept) return inPlan;
  if (!firmPiece) return `${inPlan}; not on the firm’s rack of this device`;
  const state = firm.stateOf(firmPiece);
  if (state.kind === 'held-twice') return `${inPlan}; ${stateInWords(state)}`;
  if (state.kind !== 'used-up') return inPlan;
  return isUsedBy(job.revisions, firmPiece)
    ? `${inPlan}; booked out by revision ${state.by.revision}`
    : `${inPlan}; ${stateInWords(state)}`;
}
