import type { Ground } from '../job/ground-schema';
import { coatLayers, layerNames, magneticLayers, workAlone } from './layer-kinds';
import type { ResolvedBuildUp, ResolvedLayer } from './resolve';

/** A value, or why there is none. */
export interface Figure {
  readonly value: number | null;
  /** A clause: `the ground's flatness is not recorded`; empty where there is a value. */
  readonly unknown: string;
}

export interface BuildUpFigures {
  /** Between the face of what magnets find and the finished face, mm; null where magnets find nothing. */
  readonly gap: { readonly least: Figure; readonly nominal: Figure; readonly greatest: Figure } | null;
  /** Of everything that stays on the face of the wall, kg/m². */
  readonly mass: Figure;
  /** From the bare wall to the finished face, mm. */
  readonly thickness: Figure;
  /** How often the face is coated. */
  readonly coats: number;
}

/** kg/m² of steel 1 mm thick. EN 1991-1-1:2002, table A.4: steel 77.0 to 78.5 kN/m³, the upper one for a mass of 7850 kg/m³. */
export const steelPerMm = 7.85;

/**
 * Gap, mass, thickness and coats of a zone's layers on its ground.
 *
 * The gap is least where filler and smoothing are sanded away over a high spot, nominal as the layers are given, and
 * greatest over a hollow of the ground (as deep as surveyed, filled to the level if there is filler over the steel) with
 * the reinforcement of a joint in it. Common practice, no source. Mass: thickness × density as the product is used,
 * which for coats is a little high or low as their solids weigh; layers on edges and joints alone weigh nothing here.
 *
 * @param ground undefined: not recorded
 */
export function figuresOfBuildUp({ layers }: ResolvedBuildUp, ground: Ground | undefined): BuildUpFigures {
  return {
    gap: gapOf(layers, ground),
    mass: sum(layers.filter(isOnFace).map(massOf)),
    thickness: sum(layers.filter(isOnFace).map(thicknessOf)),
    coats: layers
      .filter((layer) => isOnFace(layer) && coatLayers.includes(layer.layer.kind))
      .reduce((coats, layer) => coats + layer.coats, 0),
  };
}

function gapOf(layers: readonly ResolvedLayer[], ground: Ground | undefined): BuildUpFigures['gap'] {
  const last = layers.findLastIndex(({ layer }) => magneticLayers.includes(layer.kind));
  if (last < 0) return null;
  const above = layers.slice(last + 1);
  const onFace = above.filter(isOnFace);
  const isLevelling = ({ layer }: ResolvedLayer) => layer.kind === 'filler' || layer.kind === 'smoothing';
  const joints = above.filter(({ layer }) => layer.over === 'joints');
  const isFilled = onFace.some(({ layer }) => layer.kind === 'filler');
  const hollow: Figure = !isFilled
    ? known(0)
    : ground?.hollow === undefined
      ? unknown("the ground's flatness is not recorded")
      : known(ground.hollow);
  return {
    least: sum(onFace.filter((layer) => !isLevelling(layer)).map(thicknessOf)),
    nominal: sum(onFace.map(thicknessOf)),
    greatest: sum([...[...onFace, ...joints].map(thicknessOf), hollow]),
  };
}

function isOnFace({ layer }: ResolvedLayer): boolean {
  return layer.over === 'face';
}

function thicknessOf({ layer, thickness, product }: ResolvedLayer): Figure {
  if (workAlone.includes(layer.kind)) return known(0);
  if (thickness !== null) return known(thickness);
  const name = product?.name || layerNames[layer.kind];
  return layer.kind === 'steel'
    ? unknown('the stock sheet has no thickness')
    : unknown(`${name} has no thickness and no dry film`);
}

function massOf(resolved: ResolvedLayer): Figure {
  const { layer, product, coats, thickness } = resolved;
  if (workAlone.includes(layer.kind)) return known(0);
  if (layer.kind === 'steel')
    return thickness === null ? thicknessOf(resolved) : known(thickness * steelPerMm);
  if (product?.weight !== undefined) return known(product.weight * coats);
  if (product?.density === undefined) {
    return unknown(`${product?.name || layerNames[layer.kind]} has neither density nor weight`);
  }
  return thickness === null ? thicknessOf(resolved) : known(thickness * product.density);
}

/** Unknown where a part is; the first reason counts. */
function sum(parts: readonly Figure[]): Figure {
  const missing = parts.find(({ value }) => value === null);
  return missing ?? known(parts.reduce((total, { value }) => total + value!, 0));
}

function known(value: number): Figure {
  return { value: Math.round(value * 1e6) / 1e6, unknown: '' };
}

function unknown(why: string): Figure {
  return { value: null, unknown: why };
}
