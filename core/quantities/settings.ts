import type { QuantitiesSettings, Sundry } from '../job/quantities-schema';
import type { Job } from '../job/schema';

/** What quantities are counted by, nothing left open; lengths in mm, temperatures in °C. */
export interface Settings {
  readonly measurement: NonNullable<QuantitiesSettings['measurement']>;
  readonly temperature: number;
  readonly hands: number;
  readonly potLifeHalves: number;
  readonly hollowShare: number;
  readonly edgeStrip: number;
  readonly jointStrip: number;
  readonly propsPerPanel: number;
  readonly proppedAtOnce: number;
  readonly filmDirection: NonNullable<QuantitiesSettings['filmDirection']>;
  readonly filmOverlap: number;
  readonly filmTrim: number;
  readonly filmSeamClear: number;
  readonly sundries: readonly Sundry[];
}

/** Along every edge of a zone that is coated. */
export const readySundries: readonly Sundry[] = [
  {
    id: 'masking-tape',
    name: 'Masking tape',
    per: 'edge',
    amount: 1,
    unit: 'm',
    packs: [{ size: 50, price: 0 }],
  },
];

/**
 * Common practice, no source: all of them can be changed in the job.
 *
 * Of hollows a survey knows the deepest alone. Where hollows lie side by side and fall evenly to their middle (cones) the
 * mean depth is 1/3 of it by geometry, where they are dished (paraboloids) 1/2, and less by the share of the wall that is
 * level: 0.33 is for cones everywhere. It fills to level before the layer's own thickness, which is sanded away over high
 * spots; who counts that thickness towards the hollows sets a smaller share.
 */
const usual: Settings = {
  measurement: 'net',
  temperature: 20,
  hands: 1,
  potLifeHalves: 10,
  hollowShare: 0.33,
  edgeStrip: 20,
  jointStrip: 100,
  propsPerPanel: 2,
  proppedAtOnce: 6,
  filmDirection: 'least-waste',
  filmOverlap: 30,
  filmTrim: 30,
  filmSeamClear: 50,
  sundries: readySundries,
};

export function settingsOf({ quantities = {} }: Pick<Job, 'quantities'>): Settings {
  const given = Object.fromEntries(Object.entries(quantities).filter(([, value]) => value !== undefined));
  return { ...usual, ...given };
}
