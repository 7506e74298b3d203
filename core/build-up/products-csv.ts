import { product, type Product } from '../job/product-schema';
import { readList, writeList, type ListKind, type RowFault } from '../record-list';
import { columns } from './product-columns';

export interface ReadProducts {
  /** Of all rows that can be read, in their order. */
  readonly products: readonly Product[];
  readonly faults: readonly RowFault[];
}

const kind: ListKind<Product> = { columns, needed: ['id', 'name', 'layer', 'unit'], schema: product };

/** A list of products as CSV, in the form of every list (`core/record-list.ts`). */
export function writeProducts(products: readonly Product[]): string {
  return writeList(kind, products);
}

/** Products of a list; rows with a fault are left out and told. */
export function readProducts(text: string): ReadProducts {
  const { records, faults } = readList(kind, text);
  return { products: records, faults };
}
