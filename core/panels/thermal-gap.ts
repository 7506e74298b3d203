import type { Temperatures } from '../job/schema';
import type { Mm } from '../units';

/**
 * Per kelvin, structural steel up to 100 °C.
 * Source: EN 1993-1-1:2005, 3.2.6 (the value from memory).
 */
export const expansionOfSteel = 12e-6;

/**
 * The joint gap that lets panels grow until they are as warm as they will be, each joint taking half from the panel
 * on either side; mm.
 *
 * @param length of a panel across the joint
 * @example thermalGap(2000, { low: 5, high: 40, atFixing: 15 }) // 0.6
 */
export function thermalGap(length: Mm, { high, atFixing }: Temperatures): Mm {
  return expansionOfSteel * length * Math.max(0, high - atFixing);
}

/** By how much a joint opens beyond its gap when the steel is at its coldest, mm. */
export function thermalOpening(length: Mm, { low, atFixing }: Temperatures): Mm {
  return expansionOfSteel * length * Math.max(0, atFixing - low);
}
