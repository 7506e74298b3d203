import type { LayerKind } from '../job/product-schema';
import type { PieceKind } from '../job/quantities-schema';
import type { Hundredth } from '../units';

/** What of a zone a need is for. */
export type NeedFor =
  | 'face'
  | 'reveals'
  | 'joints'
  | 'edges'
  | 'feather'
  | 'gaps'
  | 'hollows'
  | 'zone-edge'
  | 'boxes'
  | 'panels'
  | 'fixing'
  | 'ends'
  | 'job';

/** One line of a take-off: so much of one thing, for one coat of one layer of one zone. */
export interface Need {
  /** Empty: of the whole job. */
  readonly wall: string;
  readonly zone: string;
  readonly delivery: string;
  /** Place in the build-up from 0, and what it is; null: of no layer. */
  readonly layer: number | null;
  readonly kind: LayerKind | null;
  /** From 1; 0: not by the coat. */
  readonly coat: number;
  readonly of: NeedFor;
  /** A product, a sundry or a thing by its key, such as `product fine-filler`. */
  readonly item: string;
  readonly unit: string;
  /** What lies on the wall in the end, and what has to be there to begin with, in `unit`. */
  readonly net: number;
  readonly withLoss: number;
  /** One short sentence; lengths in mm, areas in m². */
  readonly how: string;
  /** Of film: the pieces that have to come whole out of a roll, hundredths. */
  readonly pieces?: readonly Hundredth[];
}

/** Keys of what is bought, one list for all. */
export function itemOfProduct(id: string): string {
  return `product ${id}`;
}

export function itemOfSundry(id: string): string {
  return `sundry ${id}`;
}

export function itemOfStock(id: string): string {
  return `stock ${id}`;
}

/** Things of no product: what panels stand on, how layers end, what comes forward with the face. */
export function itemOfThing(kind: PieceKind): string {
  return `thing ${kind}`;
}
