import type { Product } from '../job/product-schema';
import { readyCoats } from './ready-coats';
import { readyFilms } from './ready-films';
import { readySteelProducts } from './ready-steel-products';

/** Generic products to begin with. Every value is typical (common practice, no source): the maker's data sheet replaces it. */
export const readyProducts: readonly Product[] = [...readySteelProducts, ...readyCoats, ...readyFilms];
