import { bringKinds, ownKindsOf } from './fitting-kinds';
import { emptyJob } from './defaults';
import { readJobObject } from './read';
import type { OwnKind } from './schema';

/** Kinds of fitting from JSON that was kept outside a job. Never throws: what is no sound kind is left out. */
export function readKinds(text: string | undefined): readonly OwnKind[] {
  const kinds = listIn(text).flatMap((kind) => {
    const { job } = readJobObject({
      format: 'lodeplan-job',
      version: 1,
      name: 'Kinds',
      fittingKinds: [kind],
    });
    return job ? ownKindsOf(job) : [];
  });
  return ownKindsOf(bringKinds(emptyJob(), kinds));
}

function listIn(text = '[]'): readonly unknown[] {
  try {
    const value = JSON.parse(text) as unknown;
    return Array.isArray(value) ? value : [];
  } catch {
    return [];
  }
}
