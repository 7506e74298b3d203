/** A worker that weighs one choice by hand at a time. */
export function handWeigher(): Worker {
  return new Worker(new URL('./hand.worker.ts', import.meta.url), { type: 'module' });
}
