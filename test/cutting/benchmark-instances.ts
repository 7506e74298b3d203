import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { rectangle } from '../../core/geometry/polygon';
import type { CuttingMethod, CuttingTask } from '../../core/cutting/plan';
import { readInstances, readRecords, type PackingInstance } from './instance-file';

/*
 * 250 classic instances of packing rectangles on the fewest square plates, with the best numbers of plates on
 * record. J. O. Berkey, P. Y. Wang, Two-dimensional finite bin-packing algorithms, J. Operational Research
 * Society 38 (1987) 423–429 (classes 1–6); S. Martello, D. Vigo, Exact solution of the two-dimensional finite
 * bin packing problem, Management Science 44 (1998) 388–399 (classes 7–10). The files lie beside the
 * repository; where they do not, what needs them is left out and says so.
 */

export interface BenchmarkInstance extends PackingInstance {
  /** Best recorded number of plates, quarter turns allowed: free cuts, and guillotine cuts in three stages. */
  readonly record: { readonly free: number; readonly edgeToEdge: number };
  /** Bound by dual feasible functions for both ways of cutting, worked out by whoever collected the records. */
  readonly bound: number;
}

const folder = new URL('../../../shared/benchmarks/', import.meta.url);

/** [] with a printed message where the files are absent. */
export function benchmarkInstances(): BenchmarkInstance[] {
  const file = fileURLToPath(new URL('bpp2d-development.json', folder));
  const records = fileURLToPath(new URL('bpp2d-development-best-known.json', folder));
  if (!existsSync(file) || !existsSync(records)) {
    console.log(`The classic cutting instances are left out: ${file} is not there.`);
    return [];
  }
  const best = readRecords(file);
  return readInstances(file).map((instance) => {
    const { free, edgeToEdge, bound } = best.get(instance.id)!;
    return { ...instance, record: { free, edgeToEdge }, bound };
  });
}

/** Every plate at the same price; no kerf, nothing on the rack. */
export function taskOf({ items, width, height }: PackingInstance, method: CuttingMethod): CuttingTask {
  const panels = items.flatMap(([w, h, quantity], row) =>
    Array.from({ length: quantity }, (_, copy) => ({
      mark: `${row + 1}.${copy + 1}`,
      stock: ['plate'],
      outline: rectangle(0, 0, w, h),
    })),
  );
  return {
    panels,
    stock: [{ id: 'plate', width, height, price: 1, hasFace: false }],
    rack: [],
    method,
    kerf: 0,
    leastOffcut: [1, 1],
  };
}
