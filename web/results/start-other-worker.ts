/** A second worker for jobs that are not on the screen. */
export function startOtherWorker(): Worker {
  return new Worker(new URL('./core.worker.ts', import.meta.url), { type: 'module' });
}
