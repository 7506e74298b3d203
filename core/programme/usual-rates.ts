import type { LayerKind } from '../job/product-schema';
import type { TaskKind } from '../job/programme-schema';

/*
 * What is taken where neither the job nor a product says otherwise. Every value: common practice, no source.
 */

export interface UsualPace {
  /** m² one person does in an hour, in one coat. */
  readonly rate: number;
  /** Minutes before and after, whatever the area: fetch, mix, clean. */
  readonly around: number;
}

export const usualPaces: Readonly<Record<Exclude<TaskKind, 'inspection' | 'snags'>, UsualPace>> = {
  protect: { rate: 20, around: 20 },
  'set-out': { rate: 20, around: 20 },
  degrease: { rate: 20, around: 10 },
  key: { rate: 10, around: 10 },
  prime: { rate: 15, around: 20 },
  batten: { rate: 20, around: 20 },
  bond: { rate: 4, around: 20 },
  prop: { rate: 20, around: 20 },
  'metal-primer': { rate: 12, around: 20 },
  reinforce: { rate: 10, around: 10 },
  'bonding-coat': { rate: 12, around: 20 },
  fill: { rate: 8, around: 20 },
  sand: { rate: 8, around: 15 },
  'lamp-check': { rate: 30, around: 15 },
  seal: { rate: 15, around: 20 },
  coat: { rate: 10, around: 20 },
  film: { rate: 5, around: 20 },
  demask: { rate: 40, around: 15 },
};

/** Hours until a coat can be worked on, and until the layer has hardened through. */
export interface UsualWait {
  readonly next: number;
  readonly cure: number;
}

const none: UsualWait = { next: 0, cure: 0 };
const paint: UsualWait = { next: 6, cure: 72 };

export const usualWaits: Readonly<Record<LayerKind, UsualWait>> = {
  degreasing: none,
  keying: none,
  primer: { next: 12, cure: 24 },
  adhesive: { next: 24, cure: 72 },
  steel: none,
  'metal-primer': { next: 12, cure: 72 },
  reinforcement: none,
  'bonding-coat': { next: 12, cure: 24 },
  filler: { next: 12, cure: 48 },
  sanding: none,
  sealer: { next: 12, cure: 24 },
  'magnetic-coating': { next: 6, cure: 24 },
  'magnetic-film': { next: 0, cure: 24 },
  smoothing: { next: 12, cure: 24 },
  writable: { next: 8, cure: 144 },
  'clear-writable': { next: 8, cure: 144 },
  chalk: paint,
  decorative: paint,
  'writable-film': { next: 0, cure: 24 },
  'glass-film': { next: 0, cure: 24 },
};

export const usualProgramme = {
  crew: 2,
  weekdays: [1, 2, 3, 4, 5],
  /** Days. */
  leadTime: 10,
  /** Hours. */
  acclimatise: 24,
  inspection: 1,
  snags: 2,
  visitGap: 8,
} as const;

/**
 * Below 15 °C and above 60 % drying is strongly slowed, says a product standard's public sheet for a water-borne paint. No
 * law for how much was found: the factor is common practice, no source, and the job's to change.
 */
export const usualSlowing = { factor: 1.5, below: 15, above: 60 } as const;

/** Width that counts as worked on along joints and along cut edges, m. */
export const bandAlong = { joints: 0.1, edges: 0.05 } as const;
