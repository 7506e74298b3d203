import type { Product } from '../job/product-schema';

/** Generic products to begin with. Every value is typical (common practice, no source): the maker's data sheet replaces it. */
export const readyProducts: readonly Product[] = [];
