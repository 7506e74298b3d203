/** A worker that answers one question about zone sizes. */
export function startAdviser(): Worker {
  return new Worker(new URL('./advice.worker.ts', import.meta.url), { type: 'module' });
}
