import { roundToMinorUnit } from './minor-unit';
import type { ProductPack } from './product-schema';
import type { Job } from './schema';

/** The job with the prices of all packs, of products and sundries, rounded to the minor unit of its currency. */
export function withRoundedPacks(job: Job): Job {
  const { products, quantities, currency } = job;
  const rounded = <T extends { packs: ProductPack[] }>(thing: T): T => ({
    ...thing,
    packs: thing.packs.map((pack) => ({ ...pack, price: roundToMinorUnit(pack.price, currency) })),
  });
  return {
    ...job,
    ...(products && { products: products.map(rounded) }),
    ...(quantities?.sundries && {
      quantities: { ...quantities, sundries: quantities.sundries.map(rounded) },
    }),
  };
}
