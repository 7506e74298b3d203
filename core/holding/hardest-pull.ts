import type { Magnet } from './magnet';

/** Permeability of vacuum, T·m/A. */
const mu0 = 4e-7 * Math.PI;
/** Flux density that soft iron hardly passes, T; typical, from memory. */
const ironFull = 2.1;

/**
 * What no magnet of this face can pull, N: Maxwell's stress B² A / 2μ₀ of the flux that its face can send out at most, its
 * remanence, or of a pot what its iron carries. Far above any wall; a figure beyond it is a slip of the pen.
 *
 * @example hardestPull(disc('N42', 20, 5)) // 211 N
 */
export function hardestPull({ shape, diameter, length = diameter, Br }: Magnet): number {
  const isRound = shape === 'disc' || shape === 'pot' || shape === 'ring';
  const area = (isRound ? (Math.PI / 4) * diameter * diameter : diameter * length) / 1e6;
  const B = shape === 'pot' ? ironFull : Br;
  return (B * B * area) / (2 * mu0);
}
