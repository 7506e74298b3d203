import type { FinishLevel } from './offer-schema';
import type { Job, Zone } from './schema';

/** The level of finish agreed for a zone: its own, else that of the offer; undefined: none is. */
export function finishLevelOf({ offer }: Job, { finishLevel }: Zone): FinishLevel | undefined {
  return finishLevel ?? offer?.finish?.level;
}
