import type { LayerKind } from '../job/product-schema';

/** How a kind of layer is called within a sentence. */
export const layerNames: Readonly<Record<LayerKind, string>> = {
  degreasing: 'degreasing',
  keying: 'keying',
  primer: 'primer',
  adhesive: 'adhesive',
  steel: 'steel panels',
  'metal-primer': 'anti-corrosion primer',
  reinforcement: 'joint reinforcement',
  'bonding-coat': 'bonding coat',
  filler: 'filler',
  sanding: 'sanding',
  sealer: 'sealer',
  'magnetic-coating': 'magnetic coating',
  'magnetic-film': 'magnetic film',
  smoothing: 'smoothing filler',
  writable: 'writable finish',
  'clear-writable': 'clear writable finish',
  chalk: 'chalk coat',
  decorative: 'decorative paint',
  'writable-film': 'writable film',
  'glass-film': 'film on glass',
};

/** Work that leaves nothing on the wall. */
export const workAlone: readonly LayerKind[] = ['degreasing', 'keying', 'sanding'];
/** What magnets find. */
export const magneticLayers: readonly LayerKind[] = ['steel', 'magnetic-coating', 'magnetic-film'];
/** Spread, rolled or trowelled on in coats. */
export const coatLayers: readonly LayerKind[] = [
  'primer',
  'metal-primer',
  'bonding-coat',
  'filler',
  'sealer',
  'magnetic-coating',
  'smoothing',
  'writable',
  'clear-writable',
  'chalk',
  'decorative',
];
export const filmLayers: readonly LayerKind[] = ['magnetic-film', 'writable-film', 'glass-film'];
/** What one sees and touches when the work is done. */
export const finishLayers: readonly LayerKind[] = [
  'writable',
  'clear-writable',
  'chalk',
  'decorative',
  'writable-film',
  'glass-film',
];
