import { productsOf } from '../../../core/build-up/resolve';
import { readyProducts } from '../../../core/build-up/ready-products';
import { changeJob } from '../../../core/job/changes';
import type { Product } from '../../../core/job/product-schema';
import type { Job } from '../../../core/job/schema';
import { freshListId } from './stock';
import type { NamedChange } from './named-change';

/** The product as it is to be; a ready one becomes the job's own under the same id. */
export function setProduct(product: Product, what: string): NamedChange {
  return {
    name: `Set ${what} of ${product.name}`,
    change: (job) => {
      const products = job.products ?? [];
      const at = products.findIndex(({ id }) => id === product.id);
      return changeJob(job, { products: at < 0 ? [...products, product] : products.with(at, product) });
    },
  };
}

/** A product of the job's own beside the others, to be filled in. */
export function addProduct(
  job: Job,
  like?: Product,
): { readonly product: Product; readonly change: NamedChange } {
  const id = freshListId([...productsOf(job).values()], 'PR');
  const product: Product = like
    ? { ...like, id, name: `${like.name}, copy` }
    : { id, name: 'New product', layer: 'filler', unit: 'kg', packs: [], coats: 1, drying: 'none' };
  return {
    product,
    change: {
      name: `Add product ${product.name}`,
      change: (now) => changeJob(now, { products: [...(now.products ?? []), product] }),
    },
  };
}

/** Products of a list: each takes the place of the one of its id, or stands beside the others. */
export function takeInProducts(list: readonly Product[]): NamedChange {
  const count = list.length === 1 ? '1 product' : `${list.length} products`;
  return {
    name: `Load ${count}`,
    change: (job) => {
      const ids = new Set(list.map(({ id }) => id));
      const kept = (job.products ?? []).filter(({ id }) => !ids.has(id));
      return changeJob(job, { products: [...kept, ...list] });
    },
  };
}

/** The job's own record goes; a ready one is as it came again. */
export function takeOutProduct({ id, name }: Product): NamedChange {
  const isReady = readyProducts.some((ready) => ready.id === id);
  return {
    name: isReady ? `Put ${name} back as it came` : `Delete product ${name}`,
    change: (job) => {
      const products = (job.products ?? []).filter((product) => product.id !== id);
      return changeJob(job, { products: products.length > 0 ? products : undefined });
    },
  };
}

/** What stands in the way of deleting a product, in words, or null. */
export function productInUse(job: Job, id: string): string | null {
  if (readyProducts.some((ready) => ready.id === id)) return null;
  const user = job.buildUps?.find(({ layers }) => layers.some(({ product }) => product === id));
  return user
    ? `The build-up “${user.name || user.id}” has a layer of it; choose another product there first.`
    : null;
}
