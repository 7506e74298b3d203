import type { Product } from '../job/product-schema';

type Defaulted = 'packs' | 'coats' | 'drying' | 'typical' | 'tool' | 'mixing';

/** A ready product as it is put down: packs by their sizes alone, since no price is typical. */
export type Put = Omit<Product, Defaulted> & {
  readonly packs: readonly number[];
  readonly coats?: number;
  readonly drying?: Product['drying'];
  readonly tool?: ToolPut;
  readonly mixing?: MixingPut;
};

type Tool = NonNullable<Product['tool']>;
type ToolPut = { readonly kind: Tool['kind']; readonly nap?: number; readonly notch?: Tool['notch'] };
type Mixing = NonNullable<Product['mixing']>;
type MixingPut = Omit<Mixing, 'potLifeAt'>;

/** A generic product, prices 0 and marked `typical`: every value is common practice, no source. */
export function typicalProduct({ packs, coats = 1, drying = 'none', tool, mixing, ...rest }: Put): Product {
  return {
    ...rest,
    packs: packs.map((size) => ({ size, price: 0 })),
    coats,
    drying,
    ...(tool ? { tool: { ...tool } } : {}),
    ...(mixing ? { mixing: { ...mixing, potLifeAt: 20 } } : {}),
    typical: true,
  } as Product;
}

/** Said of two-component products and of those with much solvent. */
export const reactionCautions: readonly string[] = [
  'Ventilate well; wear gloves and eye protection; read the safety data sheet before it is mixed.',
];
