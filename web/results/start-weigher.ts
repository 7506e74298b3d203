/** A worker that weighs starts of one zone at a time. */
export function startWeigher(): Worker {
  return new Worker(new URL('./start.worker.ts', import.meta.url), { type: 'module' });
}
