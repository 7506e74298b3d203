export function startRectifier(): Worker {
  return new Worker(new URL('./rectify.worker.ts', import.meta.url), { type: 'module' });
}
