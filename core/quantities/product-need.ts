import type { ResolvedLayer } from '../build-up/resolve';
import type { Product } from '../job/product-schema';
import { figure } from '../lengths';
import { theoreticalSpreadingRate, trowelled, wetFilm } from './spreading';

/** What one coat of a product takes for an area, in the product's unit, before any loss, and how that was worked out. */
export type CoatNeed = { readonly net: number; readonly how: string } | { readonly missing: string };

/**
 * One coat of a layer over an area.
 *
 * Of several ways to work it out the one nearest to the layer counts: adhesive by its trowel's notches, filler and
 * adhesive by thickness, a coat of stated thickness by its solids, else by the spreading rate, else by solids and dry
 * film, else by thickness.
 *
 * @param area m²
 * @returns `missing`: what the product would have to say, as it ends a sentence
 */
export function coatNeed({ layer, coats }: ResolvedLayer, product: Product, area: number): CoatNeed {
  const { unit } = product;
  const square = `${figure(area, 2)} m²`;
  if (unit === 'm2') return { net: area, how: square };
  if (unit === 'm') return byWidth(product, area, square);
  if (unit === 'piece') {
    if (product.spreadingRate === undefined) return { missing: 'how many m² one piece covers' };
    return byRate(area, square, product.spreadingRate, 'piece');
  }
  const isBed = layer.kind === 'filler' || layer.kind === 'smoothing' || layer.kind === 'adhesive';
  const thickness = layer.thickness === undefined ? product.thickness : layer.thickness / coats;
  const solids = product.volumeSolids;
  if (layer.kind === 'adhesive' && product.tool?.notch) {
    return inUnit(product, byNotch(area, square, product.tool.notch));
  }
  if (isBed && thickness !== undefined) return inUnit(product, byThickness(area, square, thickness));
  if (layer.thickness !== undefined && solids !== undefined) {
    return inUnit(product, bySolids(area, square, solids, (layer.thickness / coats) * 1000));
  }
  if (product.spreadingRate !== undefined) return byRate(area, square, product.spreadingRate, unit);
  if (solids !== undefined && product.dryFilm !== undefined) {
    return inUnit(product, bySolids(area, square, solids, product.dryFilm));
  }
  if (thickness !== undefined) return inUnit(product, byThickness(area, square, thickness));
  return { missing: isBed ? 'its thickness' : 'its spreading rate, or its solids and dry film thickness' };
}

/** A volume of a product, l, in its unit. */
export function volumeNeed(product: Product, litres: number, how: string): CoatNeed {
  if (product.unit !== 'l' && product.unit !== 'kg') return { missing: 'a unit of l or kg' };
  return inUnit(product, { net: litres, how });
}

function byRate(area: number, square: string, rate: number, unit: string): CoatNeed {
  return { net: area / rate, how: `${square} at ${figure(rate, 2)} m² a ${unitWord(unit)}` };
}

function bySolids(area: number, square: string, solids: number, dryFilm: number): Litres {
  const rate = theoreticalSpreadingRate(solids, dryFilm);
  const films = `${figure(wetFilm(dryFilm, solids), 0)} µm wet for ${figure(dryFilm, 1)} µm dry`;
  const from = `${figure(solids, 1)} % solids, ${films}`;
  return { net: area / rate, how: `${square} at ${figure(rate, 2)} m² a litre (${from})` };
}

function byNotch(area: number, square: string, notch: Parameters<typeof trowelled>[0]): Litres {
  const depth = trowelled(notch);
  const { shape, bridge, width, depth: c, tilt = 90 } = notch;
  const held = tilt === 90 ? 'upright' : `held at ${figure(tilt, 0)}°`;
  const size = `${shape} notches of ${figure(width, 1)} × ${figure(c, 1)} mm, teeth of ${figure(bridge, 1)} mm`;
  return { net: area * depth, how: `${square} × ${figure(depth, 3)} l/m² (${size}, trowel ${held})` };
}

function byThickness(area: number, square: string, thickness: number): Litres {
  return { net: area * thickness, how: `${square} × ${figure(thickness, 2)} mm` };
}

function byWidth({ rollWidth }: Product, area: number, square: string): CoatNeed {
  if (rollWidth === undefined) return { missing: 'its width' };
  return { net: area / (rollWidth / 1000), how: `${square} at a width of ${figure(rollWidth, 1)} mm` };
}

interface Litres {
  readonly net: number;
  readonly how: string;
}

function inUnit({ unit, density }: Product, { net, how }: Litres): CoatNeed {
  if (unit === 'l') return { net, how };
  if (density === undefined) return { missing: 'its density' };
  return { net: net * density, how: `${how} × ${figure(density, 3)} kg/l` };
}

function unitWord(unit: string): string {
  return unit === 'l' ? 'litre' : unit;
}
