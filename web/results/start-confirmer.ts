/** A worker that confirms one item by finite elements. */
export function startConfirmer(): Worker {
  return new Worker(new URL('./confirm.worker.ts', import.meta.url), { type: 'module' });
}
