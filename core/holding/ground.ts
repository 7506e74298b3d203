import type { SteelKind } from '../job/steel-kind';
import type { Mm } from '../units';
import type { Surface } from './friction';
import type { Magnet } from './magnet';
import type { SheetOrder } from './sheet-tolerance';

/** A magnet pulled straight off the finished wall with a spring balance or force gauge. */
export interface PullTest {
  readonly magnet: Magnet;
  /** What lay between magnet and wall beside the magnet's own cover, such as paper. */
  readonly between: Mm;
  /** N; several places of the zone, each well away from edges. */
  readonly readings: readonly number[];
}

/** Steel panels, the layers over them, and what was measured there. */
export interface SteelGround {
  readonly kind: 'steel';
  readonly steel: SteelKind;
  readonly thickness: Mm;
  readonly order?: SheetOrder;
  /** From the steel to the finished face: filler, paint, film. */
  readonly gap: Mm;
  /** What the gap may be at its smallest and at its largest, over a hollow; absent: 0.2 mm off. */
  readonly gapLeast?: Mm;
  readonly gapMost?: Mm;
  readonly surface: Surface;
  readonly tests: readonly PullTest[];
}

/** A magnetic-receptive coating or film: how much iron it holds is not known, so that only a test tells. */
export interface CoatingGround {
  readonly kind: 'coating';
  readonly surface: Surface;
  readonly tests: readonly PullTest[];
}

/** Nothing there that a magnet is drawn to. */
export interface BareGround {
  readonly kind: 'none';
}

/** Something is there, but not enough is known of it. */
export interface UnknownGround {
  readonly kind: 'unknown';
  /** A sentence with what is missing. */
  readonly why: string;
}

export type HoldingGround = SteelGround | CoatingGround | BareGround | UnknownGround;

/** Fewer readings than this leave a place of the wall unknown. */
export const leastReadings = 3;

export function surfaceOf(ground: HoldingGround): Surface {
  return ground.kind === 'none' || ground.kind === 'unknown' ? 'plain' : ground.surface;
}
