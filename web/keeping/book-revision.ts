import type { Job, Revision } from '../../core/job/schema';
import { isLeftBy, isUsedBy, materialOf, type Booking, type FirmPiece, type Holders } from './firm-piece';

/** What issuing a revision changes on the firm's rack. */
export interface RackChange {
  /** New pieces, and pieces as they are from now on. */
  readonly put: readonly FirmPiece[];
  /** Keys of pieces that an earlier revision would have left, had it been cut. */
  readonly remove: readonly string[];
  /** Marks of such pieces that another job holds already: they stay, and someone has to be told. */
  readonly promised: readonly string[];
}

interface Issuing {
  readonly jobKey: string;
  /** The job with the new record, the last of its revisions. */
  readonly job: Job;
  /** Whether steel was cut to the revision before: else this one takes its place on the rack. */
  readonly isSteelCut: boolean;
  readonly freshKey: () => string;
}

/**
 * Pieces that the issued plan uses are booked out, kept offcuts in. A piece that the revision before left of the same
 * panels is the same steel and stays one piece.
 *
 * @returns `fault`: which piece another job has, in a sentence; nothing is booked then
 */
export function bookRevision(
  pieces: readonly FirmPiece[],
  holders: Holders,
  issuing: Issuing,
): RackChange | { fault: string } {
  const { jobKey, job, isSteelCut, freshKey } = issuing;
  const record = job.revisions.at(-1)!;
  const booking: Booking = { jobKey, job: job.name, revision: record.id, date: record.date };
  const out = new Set(record.rack?.out);
  const used = new Set(job.rack.flatMap(({ id, firm }) => (firm !== undefined && out.has(id) ? [firm] : [])));
  for (const piece of pieces) {
    const fault = used.has(piece.key) ? whyNotOurs(piece, holders, issuing) : null;
    if (fault) return { fault };
  }

  const left = new Set(record.rack?.in.map(({ id }) => id));
  const isLeftBefore = (piece: FirmPiece) =>
    isLeftByUs(piece, issuing) && !piece.usedUp && !left.has(piece.id);
  const superseded = isSteelCut ? [] : pieces.filter(isLeftBefore);
  const isHeld = ({ key }: FirmPiece) => (holders.get(key) ?? []).some((holder) => holder.jobKey !== jobKey);

  const bookedOut = pieces
    .filter(({ key, usedUp }) => used.has(key) && !usedUp)
    .map((piece): FirmPiece => ({ ...piece, usedUp: booking }));
  const givenBack = pieces
    .filter((piece) => !isSteelCut && isUsedByUs(piece, issuing) && !used.has(piece.key))
    .map(({ usedUp: _, ...piece }): FirmPiece => piece);
  return {
    put: [...bookedOut, ...givenBack, ...newPieces(pieces, record, booking, issuing, freshKey)],
    remove: superseded.filter((piece) => !isHeld(piece)).map(({ key }) => key),
    promised: superseded.filter(isHeld).map(({ id }) => id),
  };
}

function newPieces(
  pieces: readonly FirmPiece[],
  record: Revision,
  booking: Booking,
  issuing: Issuing,
  freshKey: () => string,
): FirmPiece[] {
  const known = new Set(pieces.filter((piece) => isLeftByUs(piece, issuing)).map(({ id }) => id));
  return (record.rack?.in ?? [])
    .filter(({ id }) => !known.has(id))
    .map(({ id, stock, width, height }): FirmPiece => ({
      key: freshKey(),
      id,
      width,
      height,
      ...materialOf(issuing.job.stock.find((sheet) => sheet.id === stock)!),
      from: booking,
    }));
}

function whyNotOurs(piece: FirmPiece, holders: Holders, issuing: Issuing): string | null {
  if (piece.usedUp) {
    return isUsedByUs(piece, issuing)
      ? null
      : `Rack piece ${piece.id} is used up in “${piece.usedUp.job}”, revision ${piece.usedUp.revision}; give it back in this job's rack first.`;
  }
  const other = holders.get(piece.key)?.find(({ jobKey }) => jobKey !== issuing.jobKey);
  return other
    ? `Rack piece ${piece.id} is held by “${other.job}” too; give it back in one of them first.`
    : null;
}

/** Of this entry of the list, or of a file of it that was opened again: then the job has the record itself. */
function isLeftByUs(piece: FirmPiece, { jobKey, job }: Issuing): boolean {
  return (
    piece.from !== undefined && (piece.from.jobKey === jobKey || isLeftBy(job.revisions.slice(0, -1), piece))
  );
}

function isUsedByUs(piece: FirmPiece, { jobKey, job }: Issuing): boolean {
  return (
    piece.usedUp !== undefined &&
    (piece.usedUp.jobKey === jobKey || isUsedBy(job.revisions.slice(0, -1), piece))
  );
}
