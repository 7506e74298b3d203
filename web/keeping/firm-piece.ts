import type { Job, RackPiece, Revision, StockSheet } from '../../core/job/schema';

/** A revision of a kept job, as the rack remembers it. */
export interface Booking {
  /** Entry of the list of jobs. */
  readonly jobKey: string;
  readonly job: string;
  readonly revision: string;
  readonly date: string;
}

/** An offcut on the firm's rack. Lengths in mm. */
export interface FirmPiece {
  /** Never another piece's, on any device. */
  readonly key: string;
  /** The mark that is written on the steel. */
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly thickness?: number;
  readonly coating?: string;
  readonly hasFace: boolean;
  /** What it was bought as. */
  readonly stockName: string;
  /** What using it costs a job of this currency; absent: nothing. */
  readonly value?: number;
  readonly currency?: string;
  /** The revision that left it; absent where someone put it on the rack by hand. */
  readonly from?: Booking;
  /** The revision that cuts it up. */
  readonly usedUp?: Booking;
}

/** A kept job that has the piece on its own rack. */
export interface Holder {
  readonly jobKey: string;
  readonly job: string;
}

/** Kept jobs by the pieces that they hold; derived from the jobs, never stored beside them. */
export type Holders = ReadonlyMap<string, readonly Holder[]>;
export const noHolders: Holders = new Map();

export type PieceState =
  | { readonly kind: 'free' }
  | { readonly kind: 'reserved'; readonly by: Holder }
  | { readonly kind: 'held-twice'; readonly by: readonly Holder[] }
  | { readonly kind: 'used-up'; readonly by: Booking };

export function stateOf(piece: FirmPiece, holders: Holders): PieceState {
  if (piece.usedUp) return { kind: 'used-up', by: piece.usedUp };
  const by = holders.get(piece.key) ?? [];
  if (by.length > 1) return { kind: 'held-twice', by };
  return by.length === 1 ? { kind: 'reserved', by: by[0]! } : { kind: 'free' };
}

/** "free", "reserved by “Print studio”", "used up in “Print studio”, revision B". */
export function stateInWords(state: PieceState): string {
  switch (state.kind) {
    case 'free':
      return 'free';
    case 'reserved':
      return `reserved by “${state.by.job}”`;
    case 'held-twice':
      return `held by ${state.by.map(({ job }) => `“${job}”`).join(' and ')}: give it back in one of them`;
    case 'used-up':
      return `used up in “${state.by.job}”, revision ${state.by.revision}`;
  }
}

/** Whether one of these revisions left the piece; marks are never given twice on a device. */
export function isLeftBy(revisions: readonly Revision[], { id, from }: FirmPiece): boolean {
  return revisions.some(
    (one) =>
      one.id === from?.revision && one.date === from.date && one.rack?.in.some((piece) => piece.id === id),
  );
}

/** Whether one of these revisions cuts the piece up. */
export function isUsedBy(revisions: readonly Revision[], { id, usedUp }: FirmPiece): boolean {
  return revisions.some(
    (one) => one.id === usedUp?.revision && one.date === usedUp.date && one.rack?.out.includes(id),
  );
}

/** Stock sheets of a job that a piece could have been cut from: same thickness, coating and face side. */
export function stockLike(piece: FirmPiece, job: Job): StockSheet[] {
  return job.stock.filter(
    (stock) =>
      stock.thickness === piece.thickness &&
      plain(stock.coating) === plain(piece.coating) &&
      stock.hasFace === piece.hasFace,
  );
}

/** The piece as it lies on a job's own rack; its value counts only in its own currency. */
export function asRackPiece(piece: FirmPiece, stock: StockSheet, { currency }: Job): RackPiece {
  const { id, width, height, value, key } = piece;
  return {
    id,
    stock: stock.id,
    width,
    height,
    ...(value !== undefined && piece.currency === currency && { value }),
    firm: key,
  };
}

/** What a stock sheet says of every piece that is left of it. */
export function materialOf(
  stock: StockSheet,
): Pick<FirmPiece, 'thickness' | 'coating' | 'hasFace' | 'stockName'> {
  return {
    hasFace: stock.hasFace,
    stockName: stock.name || stock.id,
    ...(stock.thickness !== undefined && { thickness: stock.thickness }),
    ...(stock.coating && { coating: stock.coating }),
  };
}

/** "0.5 mm, galvanised, one face side". */
export function materialInWords({ thickness, coating, hasFace }: FirmPiece): string {
  return [
    thickness === undefined ? 'thickness not said' : `${thickness} mm`,
    coating || 'no coating said',
    ...(hasFace ? ['has a face side'] : []),
  ].join(', ');
}

/** R and the number after the highest that any piece has or had. */
export function nextMark(marks: Iterable<string>): string {
  let highest = 0;
  for (const mark of marks) highest = Math.max(highest, Number(/^R(\d{1,9})$/.exec(mark)?.[1] ?? 0));
  return `R${highest + 1}`;
}

function plain(coating: string | undefined): string {
  return (coating ?? '').trim().toLowerCase();
}
