import type { Ground } from '../job/ground-schema';
import type { BuildUp, Layer } from '../job/product-schema';

/*
 * What a ground asks for before the ready layers of a build-up can follow. Common practice, no source; a build-up of the
 * job's own says all of its layers itself.
 */

/** Grounds that draw in water. */
export const absorbentGrounds: readonly string[] = [
  'bare-plaster',
  'gypsum-board',
  'concrete',
  'brick',
  'timber',
];
/** Grounds that no water leaves through. */
export const denseGrounds: readonly string[] = ['sound-paint', 'old-coating', 'glass', 'metal'];

const primed: Layer = { kind: 'primer', product: 'plaster-primer', over: 'face' };
const cleaned: Layer = { kind: 'degreasing', product: 'degreaser', over: 'face' };
const keyed: Layer = { kind: 'keying', over: 'face' };
const gripped: Layer = { kind: 'primer', product: 'adhesion-primer', over: 'face' };

/** Layers on the ground, before those of the ready build-up; none where the ground is not known, or is glass for film. */
export function groundLayers({ material = '' }: Ground, { layers }: BuildUp): readonly Layer[] {
  if (layers.some(({ kind }) => kind === 'glass-film')) return [];
  if (absorbentGrounds.includes(material)) return [primed];
  if (!denseGrounds.includes(material)) return [];
  const isBare = material === 'glass' || material === 'metal';
  const isSteel = layers.some(({ kind }) => kind === 'steel');
  return isBare && !isSteel ? [cleaned, keyed, gripped] : [cleaned, keyed];
}
