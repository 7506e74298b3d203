import type { Finding } from '../finding';
import type { Ground } from '../job/ground-schema';
import type { Layer, LayerKind } from '../job/product-schema';
import type { Job, Wall, Zone } from '../job/schema';
import { layerNames, workAlone } from './layer-kinds';
import type { ResolvedLayer } from './resolve';

/** What a rule looks at: a zone with its layers on its wall. */
export interface RuleContext {
  readonly job: Job;
  readonly wall: Wall;
  /** Empty where nothing is recorded. */
  readonly ground: Ground;
  readonly zone: Zone;
  /** From the bare wall to the finish. */
  readonly layers: readonly ResolvedLayer[];
}

/** What a build-up must hold. A rule of level `note` reminds of what the layers ask for, even where nothing is wrong. */
export interface Rule {
  /** Stable, kebab-case. */
  readonly code: string;
  readonly level: Finding['level'];
  /** Whether the rule has something to say. */
  readonly test: (context: RuleContext) => boolean;
  /** A clause that follows on the zone's name: `the adhesive dries by losing water, …`. */
  readonly text: (context: RuleContext) => string;
  /** Why, in a sentence. */
  readonly reason: string;
  readonly source: string;
  /** How to mend it, an imperative clause without its stop. */
  readonly mend: string;
  /** The layers mended, where that can be done without asking; undefined: it wants a decision or work on site. */
  readonly apply?: (layers: readonly Layer[]) => readonly Layer[];
}

export const commonPractice = 'common practice, no source';

export function has({ layers }: RuleContext, ...kinds: readonly LayerKind[]): boolean {
  return layers.some(({ layer }) => kinds.includes(layer.kind));
}

/** Index of the first layer of these kinds that covers the face; −1 if there is none. */
export function firstOf({ layers }: RuleContext, ...kinds: readonly LayerKind[]): number {
  return layers.findIndex(({ layer }) => kinds.includes(layer.kind) && layer.over === 'face');
}

/** Layers over the last steel; [] without steel. */
export function overSteel({ layers }: RuleContext): readonly ResolvedLayer[] {
  const steel = layers.findLastIndex(({ layer }) => layer.kind === 'steel');
  return steel < 0 ? [] : layers.slice(steel + 1);
}

/** What a layer lies on: the nearest one below that stays on the face; null: the ground itself. */
export function below({ layers }: RuleContext, index: number): ResolvedLayer | null {
  const under = layers
    .slice(0, index)
    .findLast(({ layer }) => layer.over === 'face' && !workAlone.includes(layer.kind));
  return under ?? null;
}

/** `“Fine filler”`, or `filler` where no product is chosen. */
export function nameOfLayer({ layer, product }: ResolvedLayer): string {
  return product ? `“${product.name}”` : layerNames[layer.kind];
}

/** A layer put in before the first of the kinds that covers the face; at the end where there is none. */
export function insertBefore(
  layers: readonly Layer[],
  kinds: readonly LayerKind[],
  layer: Layer,
  from = 0,
): readonly Layer[] {
  const found = layers.findIndex((one, i) => i >= from && one.over === 'face' && kinds.includes(one.kind));
  return layers.toSpliced(found < 0 ? layers.length : found, 0, layer);
}

/** Place behind the last layer of a kind; 0 if there is none. */
export function behindLast(layers: readonly Layer[], kind: LayerKind): number {
  return layers.findLastIndex((layer) => layer.kind === kind) + 1;
}
