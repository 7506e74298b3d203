import type { Box } from '../geometry/polygon';
import type { Hundredth } from '../units';
import { modulo, type Pattern } from './grid';
import type { StartCandidate } from './panel';

/**
 * The order in which starts are preferred: no slivers, fewest stock sheets, fewest cut panels, symmetry. Then
 * fewest panels, and a start nearer to whole panels along the foot and then along the left of the zone, so that
 * the choice does not hang on where the wall's datum is.
 *
 * @returns negative if `a` is the better
 */
export function compareStarts(a: StartCandidate, b: StartCandidate, box: Box, pattern: Pattern): number {
  return (
    a.slivers - b.slivers ||
    a.stockSheets - b.stockSheets ||
    a.cutPanels - b.cutPanels ||
    a.asymmetry - b.asymmetry ||
    a.panels - b.panels ||
    modulo(box.bottom - a.start.y, pattern.pitchY) - modulo(box.bottom - b.start.y, pattern.pitchY) ||
    modulo(box.left - a.start.x, pattern.pitchX) - modulo(box.left - b.start.x, pattern.pitchX)
  );
}

/** The best few starts so far, best first, no two of them nearly the same. */
export interface Podium {
  readonly places: readonly StartCandidate[];
  /** Whether a start with these figures would still find a place. */
  wouldPlace(candidate: StartCandidate): boolean;
  enter(candidate: StartCandidate): void;
}

/**
 * @param apart a start this near to a better one, both ways and modulo the pitch, is not another choice
 */
export function podium(size: number, apart: Hundredth, box: Box, pattern: Pattern): Podium {
  let places: StartCandidate[] = [];
  const compare = (a: StartCandidate, b: StartCandidate) => compareStarts(a, b, box, pattern);
  const near = (a: number, b: number, pitch: number) => {
    const off = modulo(a - b, pitch);
    return Math.min(off, pitch - off) < apart;
  };
  const isNear = (a: StartCandidate, b: StartCandidate) =>
    near(a.start.x, b.start.x, pattern.pitchX) && near(a.start.y, b.start.y, pattern.pitchY);
  return {
    get places() {
      return places;
    },
    wouldPlace: (candidate) =>
      (places.length < size || compare(candidate, places.at(-1)!) < 0) &&
      !places.some((place) => isNear(place, candidate) && compare(place, candidate) <= 0),
    enter(candidate) {
      const better = places.filter((place) => compare(place, candidate) <= 0);
      if (better.some((place) => isNear(place, candidate))) return;
      const worse = places.slice(better.length).filter((place) => !isNear(place, candidate));
      places = [...better, candidate, ...worse].slice(0, size);
    },
  };
}
