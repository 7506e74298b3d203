import type { Product } from '../job/product-schema';

/*
 * How far a unit of a product goes. Letters and units are those of data sheets: VS in per cent by volume, DFT in µm,
 * areas in m², amounts in litres.
 */

/**
 * TSR = VS · 10 / DFT: the m² that a litre covers where nothing is lost.
 *
 * Source: several coating texts, the same formula; published grids of it are in the tests.
 *
 * @example theoreticalSpreadingRate(65, 125) // 5.2
 */
export function theoreticalSpreadingRate(volumeSolids: number, dryFilm: number): number {
  return (volumeSolids * 10) / dryFilm;
}

/**
 * What has to be there for what has to lie on the wall. A practical spreading rate is the theoretical one times 1 − loss, so
 * the need is divided by 1 − loss; it is not multiplied by 1 + loss.
 */
export function withLoss(net: number, loss: number): number {
  return net / (1 - loss);
}

/**
 * Wet film in µm that dries to a dry one; `thinner` as a share of the paint.
 *
 * Source: MIL-HDBK-1110, procedure 13 (DFT = WFT · VS / 100); thinned: a published example.
 */
export function wetFilm(dryFilm: number, volumeSolids: number, thinner = 0): number {
  return (dryFilm * (1 + thinner) * 100) / volumeSolids;
}

type Notch = NonNullable<NonNullable<Product['tool']>['notch']>;

/**
 * Adhesive that a notched trowel leaves, l/m²: full notches, b · c / (a + b), half of it for triangular ones; a tilted
 * trowel lowers the ridge by the sine of its angle to the wall.
 *
 * Source: letters a, b, c as in TKB Technical Briefing Note 6 (2007), clause 2.2; the rest is geometry.
 */
export function trowelled({ shape, bridge, width, depth, tilt = 90 }: Notch): number {
  const upright = (width * depth) / (bridge + width) / (shape === 'triangular' ? 2 : 1);
  // An upright trowel must not lose anything to the binary value of a right angle.
  return tilt === 90 ? upright : upright * Math.sin((tilt * Math.PI) / 180);
}
