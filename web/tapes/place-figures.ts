/** A figure that wants a place on a tape. */
export interface Wanted {
  /** px along the tape where its tick stands. */
  readonly at: number;
  /** px that the figure takes along the tape. */
  readonly length: number;
  /** Higher goes first; figures of the same rank from the tape's start. */
  readonly rank: number;
}

/** Where a figure stands: its start along the tape in px, and its row across the tape. */
export interface Place {
  readonly start: number;
  readonly row: number;
}

/** px between two figures of a row, and between a tick and its figure. */
const gap = 4;

/**
 * Places figures along a tape so that none overlaps another: after its tick, else before it, else in the next row.
 * What finds no room has no place; its tick stays, and zooming in makes room.
 *
 * @param rows how many figures fit across the tape
 * @param end px; figures keep to 0 … end
 * @returns a place or null for each, in the order given
 */
export function placeFigures(wanted: readonly Wanted[], rows: number, end: number): (Place | null)[] {
  const taken: { from: number; to: number }[][] = Array.from({ length: rows }, () => []);
  const places: (Place | null)[] = wanted.map(() => null);
  const order = wanted
    .map((_, i) => i)
    .sort((a, b) => wanted[b]!.rank - wanted[a]!.rank || wanted[a]!.at - wanted[b]!.at);
  for (const i of order) {
    const { at, length } = wanted[i]!;
    if (at < -gap || at > end + gap) continue;
    for (const { start, row } of candidates(at, length, rows)) {
      const from = start - gap / 2;
      const to = start + length + gap / 2;
      if (start < 0 || start + length > end || !isFree(taken[row]!, from, to)) continue;
      taken[row]!.push({ from, to });
      places[i] = { start, row };
      break;
    }
  }
  return places;
}

function candidates(at: number, length: number, rows: number): Place[] {
  return Array.from({ length: rows }, (_, row) => [
    { start: at + gap, row },
    { start: at - gap - length, row },
  ]).flat();
}

function isFree(row: readonly { from: number; to: number }[], from: number, to: number): boolean {
  return row.every((other) => to <= other.from || from >= other.to);
}
