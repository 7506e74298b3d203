import type { MapBand } from '../../core/holding/holding-map';

/** How a band is hatched, px; the density says how sure and how strong, beside the figure in words. */
export interface MapHatch {
  /** Between lines; undefined: left blank. */
  readonly pitch?: number;
  /** Rising to the right, or falling. */
  readonly rises: boolean;
  readonly dash: readonly number[];
}

export function hatchOf({ verdict, isNearEdge }: Pick<MapBand, 'verdict' | 'isNearEdge'>): MapHatch {
  if (verdict === 'does not hold') return { rises: true, dash: [] };
  const pitch = isNearEdge ? 14 : 7;
  if (verdict === 'holds') return { pitch, rises: true, dash: [] };
  if (verdict === 'holds only if tested') return { pitch, rises: false, dash: [6, 3] };
  return { pitch: 16, rises: false, dash: [1, 4] };
}
