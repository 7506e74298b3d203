import { buildUpKind } from '../job/build-up-kinds';
import type { Ground } from '../job/ground-schema';
import type { BuildUp, Layer, Product } from '../job/product-schema';
import type { Job, Zone } from '../job/schema';
import { groundLayers } from './ground-layers';
import { readyBuildUps } from './ready-build-ups';
import { readyProducts } from './ready-products';

/** A layer with its product, its coats and its thickness. */
export interface ResolvedLayer {
  readonly layer: Layer;
  /** null: work alone, or steel, or a product that the job does not have. */
  readonly product: Product | null;
  readonly coats: number;
  /** Dry, of all coats together, mm; null where no thickness follows from what is known. Of steel: of its stock sheet. */
  readonly thickness: number | null;
}

export interface ResolvedBuildUp {
  /** Of the job's own build-up, or of the ready one. */
  readonly id: string;
  readonly name: string;
  /** From the bare wall to the finish. */
  readonly layers: readonly ResolvedLayer[];
}

/** The job's products and the ready ones that it has not put others in place of; by id. */
export function productsOf(job: Job): ReadonlyMap<string, Product> {
  return new Map([...readyProducts, ...(job.products ?? [])].map((product) => [product.id, product]));
}

/** Products that layers of the job's zones name, each once, in the order of the walls. */
export function productsInUse(job: Job): Product[] {
  const used = job.walls.flatMap(({ zones, ground }) =>
    zones.flatMap((zone) =>
      buildUpOf(job, zone, ground).layers.flatMap(({ product }) => (product ? [product] : [])),
    ),
  );
  return [...new Set(used)];
}

/**
 * The layers of a zone: those it names, else the ready ones of its kind on this ground; none for a kind nobody knows.
 *
 * @param ground of the zone's wall; undefined: not recorded
 */
export function buildUpOf(job: Job, zone: Zone, ground: Ground | undefined): ResolvedBuildUp {
  const own = job.buildUps?.find(({ id }) => id === zone.layers);
  if (own) return resolve(job, own, zone);
  const ready = readyBuildUps.find(({ kind }) => kind === zone.buildUp);
  if (!ready) return resolve(job, { id: zone.buildUp, name: '', kind: zone.buildUp, layers: [] }, zone);
  const layers = [...groundLayers(ground ?? {}, ready), ...ready.layers];
  return resolve(job, { ...ready, layers }, zone);
}

/** Layers as they would be on a zone. */
export function resolve(job: Job, { id, name, kind, layers }: BuildUp, zone: Zone): ResolvedBuildUp {
  const products = productsOf(job);
  const stock = job.stock.find((sheet) => sheet.id === zone.layout?.stock);
  return {
    id,
    name: name || buildUpKind(kind).label,
    layers: layers.map((layer): ResolvedLayer => {
      const product = (layer.product !== undefined && products.get(layer.product)) || null;
      const coats = layer.coats ?? product?.coats ?? 1;
      const thickness =
        layer.kind === 'steel' ? (stock?.thickness ?? null) : thicknessOf(layer, product, coats);
      return { layer, product, coats, thickness };
    }),
  };
}

function thicknessOf({ thickness }: Layer, product: Product | null, coats: number): number | null {
  if (thickness !== undefined) return thickness;
  if (product?.thickness !== undefined) return product.thickness * coats;
  if (product?.dryFilm !== undefined) return (product.dryFilm / 1000) * coats;
  return null;
}
