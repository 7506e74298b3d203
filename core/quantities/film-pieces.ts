import type { Region } from '../geometry/polygon';
import type { Hundredth } from '../units';
import type { StripPlan } from './film-strips';
import { slabsOf, stretchesIn, turned, type Stretch } from './strip-slabs';

/** What is cut from the roll in one length, where it goes; hundredths, wall frame. */
export interface FilmPiece {
  /** `3`; `3a`, `3b` where an opening parts the strip. Strips count from the left or from the foot. */
  readonly mark: string;
  /** Across the run: what shows, and what has to be there with half of the double cut or the trim. */
  readonly from: Hundredth;
  readonly to: Hundredth;
  readonly reachFrom: Hundredth;
  readonly reachTo: Hundredth;
  /** Along the run, with trim. */
  readonly begins: Hundredth;
  readonly ends: Hundredth;
}

/**
 * The pieces of a plan in the order of its strips.
 *
 * @param overlap, trim by which it was planned
 */
export function piecesOfPlan(
  { strips, seams }: StripPlan,
  { overlap, trim }: { readonly overlap: Hundredth; readonly trim: Hundredth },
): FilmPiece[] {
  const half = Math.ceil(overlap / 2);
  const beyond = (at: Hundredth) => (seams.includes(at) ? half : trim);
  return strips.flatMap(({ from, to, pieces }, i) =>
    pieces.map((piece, k): FilmPiece => ({
      mark: `${i + 1}${pieces.length > 1 ? letterOf(k) : ''}`,
      from,
      to,
      reachFrom: from - beyond(from),
      reachTo: to + beyond(to),
      begins: piece.from,
      ends: piece.to,
    })),
  );
}

/** A seam where there is film: across the run of the strips, and along it. */
export interface SeamRun extends Stretch {
  readonly at: Hundredth;
}

/**
 * The seams of a plan without what they pass through openings and beyond the edge.
 *
 * @param region that was planned
 */
export function seamRuns({ seams, direction }: StripPlan, region: Region): SeamRun[] {
  const slabs = slabsOf(turned(region, direction));
  return seams.flatMap((at) => stretchesIn(slabs, at - 1, at + 1, 0).map((run) => ({ at, ...run })));
}

function letterOf(index: number): string {
  const rest = Math.floor(index / 26);
  return `${rest > 0 ? letterOf(rest - 1) : ''}${String.fromCharCode(97 + (index % 26))}`;
}
