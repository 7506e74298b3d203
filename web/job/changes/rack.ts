import { changeJob } from '../../../core/job/changes';
import type { RackPiece } from '../../../core/job/schema';
import type { NamedChange } from './named-change';

export function putOnRack(piece: RackPiece): NamedChange {
  return {
    name: `Put ${piece.id} on the rack`,
    change: (job) => changeJob(job, { rack: [...job.rack, piece] }),
  };
}

/** A piece of the firm's rack: while it lies on the job's rack no other job can take it. */
export function takeFromFirm(piece: RackPiece): NamedChange {
  return { ...putOnRack(piece), name: `Take ${piece.id} from the firm's rack` };
}

/** A field set to undefined is taken out. */
export function setRackPiece(id: string, patch: Partial<RackPiece>): NamedChange {
  return {
    name: `Change rack piece ${id}`,
    change: (job) =>
      changeJob(job, {
        rack: job.rack.map((piece) => (piece.id === id ? withoutUndefined({ ...piece, ...patch }) : piece)),
      }),
  };
}

export function takeOffRack(id: string): NamedChange {
  return {
    name: `Take ${id} off the rack`,
    change: (job) => changeJob(job, { rack: job.rack.filter((piece) => piece.id !== id) }),
  };
}

export function giveBack(id: string): NamedChange {
  return { ...takeOffRack(id), name: `Give ${id} back to the firm's rack` };
}

function withoutUndefined(piece: RackPiece): RackPiece {
  return Object.fromEntries(Object.entries(piece).filter(([, value]) => value !== undefined)) as RackPiece;
}
