import type { ResolvedLayer } from '../build-up/resolve';
import type { Wall } from '../job/schema';
import type { Settings } from './settings';
import type { ZoneMeasures } from './zone-measures';

/** A zone with all that its needs follow from. */
export interface ZoneTask {
  readonly wall: Wall;
  readonly measures: ZoneMeasures;
  readonly layers: readonly ResolvedLayer[];
  readonly settings: Settings;
  /** Beyond the face, hundredths squared: the tapered margin of filler. */
  readonly featherArea: number;
}
