import type { Box } from '../geometry/polygon';
import type { Hundredth } from '../units';
import type { CutSize } from './cut-size';
import { modulo, type Pattern } from './grid';
import type { StartCandidate } from './panel';

/**
 * The order in which starts are preferred: what was chosen by hand, no slivers, no joint too near to a corner of an opening,
 * fewest stock sheets, fewest cut panels, shortest cut length, symmetry. Then
 * fewest panels, and a start nearer to whole panels along the foot and then along the left of the zone, so that
 * the choice does not hang on where the wall's datum is.
 *
 * @returns negative if `a` is the better
 */
export function compareStarts(a: StartCandidate, b: StartCandidate, box: Box, pattern: Pattern): number {
  return (
    (a.unmet ?? 0) - (b.unmet ?? 0) ||
    a.slivers - b.slivers ||
    a.nearCorners - b.nearCorners ||
    a.stockSheets - b.stockSheets ||
    a.cutPanels - b.cutPanels ||
    a.cutLength - b.cutLength ||
    a.asymmetry - b.asymmetry ||
    a.panels - b.panels ||
    modulo(box.bottom - a.start.y, pattern.pitchY) - modulo(box.bottom - b.start.y, pattern.pitchY) ||
    modulo(box.left - a.start.x, pattern.pitchX) - modulo(box.left - b.start.x, pattern.pitchX)
  );
}

/** The best few starts so far, best first, no two of them much alike. */
export interface Podium {
  readonly places: readonly StartCandidate[];
  /** Whether a start with these figures may still find a place. */
  wouldPlace(candidate: StartCandidate): boolean;
  /** @param sizes of its cut panels */
  enter(candidate: StartCandidate, sizes: readonly CutSize[]): void;
}

interface Place {
  readonly candidate: StartCandidate;
  readonly widths: readonly Hundredth[];
  readonly heights: readonly Hundredth[];
}

/**
 * Two starts are no choice where they lie near each other, both ways and modulo the pitch, or where they lead to the
 * same figures and to cut panels of nearly the same sizes, as one layout and its mirror image do.
 *
 * @param apart starts and sides nearer than this are alike
 */
export function podium(size: number, apart: Hundredth, box: Box, pattern: Pattern): Podium {
  let places: Place[] = [];
  const compare = (a: StartCandidate, b: StartCandidate) => compareStarts(a, b, box, pattern);
  const near = (a: number, b: number, pitch: number) => {
    const off = modulo(a - b, pitch);
    return Math.min(off, pitch - off) < apart;
  };
  const isNear = (a: StartCandidate, b: StartCandidate) =>
    near(a.start.x, b.start.x, pattern.pitchX) && near(a.start.y, b.start.y, pattern.pitchY);
  const areSidesAlike = (a: readonly Hundredth[], b: readonly Hundredth[]) =>
    a.length === b.length && a.every((side, i) => Math.abs(side - b[i]!) < apart);
  const isAlike = (a: Place, b: Place) =>
    isNear(a.candidate, b.candidate) ||
    (haveSameCounts(a.candidate, b.candidate) &&
      areSidesAlike(a.widths, b.widths) &&
      areSidesAlike(a.heights, b.heights));
  return {
    get places() {
      return places.map(({ candidate }) => candidate);
    },
    wouldPlace: (candidate) =>
      (places.length < size || compare(candidate, places.at(-1)!.candidate) < 0) &&
      !places.some((place) => isNear(place.candidate, candidate) && compare(place.candidate, candidate) <= 0),
    enter(candidate, sizes) {
      const own: Place = {
        candidate,
        widths: sizes.map(({ width }) => width).sort((a, b) => a - b),
        heights: sizes.map(({ height }) => height).sort((a, b) => a - b),
      };
      const better = places.filter((place) => compare(place.candidate, candidate) <= 0);
      if (better.some((place) => isAlike(place, own))) return;
      const worse = places.slice(better.length).filter((place) => !isAlike(place, own));
      places = [...better, own, ...worse].slice(0, size);
    },
  };
}

function haveSameCounts(a: StartCandidate, b: StartCandidate): boolean {
  return (
    a.slivers === b.slivers &&
    a.nearCorners === b.nearCorners &&
    a.stockSheets === b.stockSheets &&
    a.cutPanels === b.cutPanels &&
    a.panels === b.panels
  );
}
