import type { HungKind } from './hung-schema';
import { withMissing, type NamedKind } from './kind-names';
import { mostFittingKinds, mostHungKinds } from './limits';
import { readJobObject } from './read';
import type { OwnKind } from './schema';

/** Kinds of fitting from JSON that was kept outside a job. Never throws: what is no sound kind is left out. */
export function readKinds(text: string | undefined): readonly OwnKind[] {
  return readList(text, mostFittingKinds, (kind) => readAlone('fittingKinds', kind)?.fittingKinds);
}

/** Likewise kinds of hung item. */
export function readHungKinds(text: string | undefined): readonly HungKind[] {
  return readList(text, mostHungKinds, (kind) => readAlone('hungKinds', kind)?.hungKinds);
}

function readList<K extends NamedKind>(
  text: string | undefined,
  most: number,
  read: (kind: unknown) => readonly K[] | undefined,
): readonly K[] {
  return withMissing(
    [],
    listIn(text).flatMap((kind) => read(kind) ?? []),
    most,
  );
}

/** A job with this one kind, which so has passed the checks of a job file. */
function readAlone(list: 'fittingKinds' | 'hungKinds', kind: unknown) {
  return readJobObject({ format: 'lodeplan-job', version: 1, name: 'Kinds', [list]: [kind] }).job;
}

function listIn(text = '[]'): readonly unknown[] {
  try {
    const value = JSON.parse(text) as unknown;
    return Array.isArray(value) ? value : [];
  } catch {
    return [];
  }
}
