import { outsideLimits, type PullSituation } from './limits';
import type { Magnet } from './magnet';
import { pullOf } from './pull-range';

/*
 * A maker's pull replaces the model only where it was measured under conditions no easier than here: on steel no thicker,
 * across a gap no smaller. Pulls on thick steel must not be used for a thin sheet (note on holding force, section 1).
 */

/**
 * The maker's pull, N, if it was measured on no thicker steel and across no smaller gap; else undefined. Of foil that is rated
 * by area: as much of it as there is.
 */
export function ratedPullHere(magnet: Magnet, { thickness, gap }: Pick<PullSituation, 'thickness' | 'gap'>) {
  const { rated, ratedPerArea, diameter, length = diameter } = magnet;
  if (!rated || rated.thickness > thickness + 1e-9 || rated.gap + 1e-9 < gap) return undefined;
  return isByArea(magnet) ? (ratedPerArea! * diameter * length) / 100 : rated.force;
}

export function isByArea({ shape, ratedPerArea }: Magnet): boolean {
  return shape === 'foil' && ratedPerArea !== undefined;
}

/**
 * The remanence at which the model gives the maker's pull under the maker's conditions: a magnet that is weaker than its
 * grade shows so. Undefined without a rated pull, or where its conditions lie outside the limits of the model — above all
 * at no gap, where a pull says more of the polish than of the magnet.
 */
export function ratedBr(magnet: Magnet): number | undefined {
  const { rated, shape, diameter, height, mur } = magnet;
  if (!rated || shape !== 'disc' || !(rated.force > 0)) return undefined;
  const situation = { diameter, height, mur, Br: 1, thickness: rated.thickness, gap: rated.gap };
  if (outsideLimits(situation).length > 0) return undefined;
  const at = (Br: number) => pullOf({ ...situation, Br }).F;
  let [low, high] = [0, 2];
  if (at(high) < rated.force) return undefined;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (at(middle) < rated.force) low = middle;
    else high = middle;
  }
  return low;
}
