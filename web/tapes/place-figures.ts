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

/** The part of a tape that figures keep to, px along it. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** px between two figures of a row, and between a tick and the figures beside it. */
const gap = 3;

/**
 * Places figures along a tape so that none overlaps another and no tick runs through a figure. A figure stands
 * after its tick, else before it, else in a further row, to which its tick is drawn out:
 *
 *      |300   |700     1240|  |1250
 *      |      |     1230|  |  |
 *
 * What finds no room has no place; its tick stays short, and zooming in makes room.
 *
 * @param rows how many figures fit across the tape
 * @returns a place or null for each, in the order given
 */
export function placeFigures(wanted: readonly Wanted[], rows: number, span: Span): (Place | null)[] {
  const figures: Span[][] = Array.from({ length: rows }, () => []);
  const ticks: number[][] = Array.from({ length: rows }, () => []);
  const places: (Place | null)[] = wanted.map(() => null);
  const order = wanted
    .map((_, i) => i)
    .sort((a, b) => wanted[b]!.rank - wanted[a]!.rank || wanted[a]!.at - wanted[b]!.at);

  const ticksAt = wanted.map(({ at }) => at).sort((a, b) => a - b);

  const hasRoom = (at: number, figure: Span, row: number): boolean =>
    figure.from >= span.from &&
    figure.to <= span.to &&
    figures.slice(0, row + 1).every((others) => others.every(({ from, to }) => at < from || at > to)) &&
    figures[row]!.every(({ from, to }) => figure.to + gap <= from || figure.from - gap >= to) &&
    ticks[row]!.every((tick) => tick <= figure.from || tick >= figure.to);

  for (const i of order) {
    const { at, length } = wanted[i]!;
    for (const { start, row } of candidates(wanted[i]!, rows, ticksAt)) {
      const figure = { from: start, to: start + length };
      if (at < span.from || at > span.to || !hasRoom(at, figure, row)) continue;
      figures[row]!.push(figure);
      for (let r = 0; r <= row; r++) ticks[r]!.push(at);
      places[i] = { start, row };
      break;
    }
  }
  return places;
}

/**
 * After the tick, before it, and so on from row to row; what would lie over other ticks in the first row, and so
 * take their figures' room, comes last.
 */
function candidates({ at, length }: Wanted, rows: number, ticksAt: readonly number[]): Place[] {
  const covered = ({ start, row }: Place) =>
    row > 0 ? 0 : countBelow(ticksAt, start + length) - countBelow(ticksAt, start, true);
  return Array.from({ length: rows }, (_, row) => [
    { start: at + gap, row },
    { start: at - gap - length, row },
  ])
    .flat()
    .map((place) => ({ place, covered: covered(place) }))
    .sort((a, b) => a.covered - b.covered)
    .map(({ place }) => place);
}

/** How many of the ascending numbers are less than `limit`, or than or equal to it. */
function countBelow(ascending: readonly number[], limit: number, orEqual = false): number {
  let [from, to] = [0, ascending.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    const value = ascending[middle]!;
    if (value < limit || (orEqual && value === limit)) from = middle + 1;
    else to = middle;
  }
  return from;
}
