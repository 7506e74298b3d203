import { withoutUndefined } from './changes';
import { faultOfName, findKind, isSameName, withMissing } from './kind-names';
import { mostFittingKinds } from './limits';
import { fittingKinds, openingKinds, type Fitting, type Job, type OwnKind, type Wall } from './schema';

/*
 * Kinds of fitting that the user has made, by their names: a fitting says the name of its kind, so that a program which
 * knows nothing of them still shows what it is. The usual kinds and their figures stand in `defaults.ts`.
 */

export interface FittingPlace {
  readonly wall: Wall;
  readonly fitting: Fitting;
}

export function ownKindsOf({ fittingKinds = [] }: Job): readonly OwnKind[] {
  return fittingKinds;
}

/**
 * Why a kind cannot be called so, in a sentence, or null.
 *
 * @param others the kinds it has to differ from
 */
export function faultOfKindName(name: string, others: readonly OwnKind[]): string | null {
  return faultOfName(name, usualNames, others);
}

const usualNames: readonly string[] = [
  ...[...openingKinds, ...fittingKinds].map((kind) => kind.replace('-', ' ')),
  ...['opening', 'fitting', 'zone', 'kind', 'free opening', 'free fitting'],
];

/** What has live parts behind its plate. */
export function isElectric(kind: string, own: readonly OwnKind[]): boolean {
  return ['socket', 'switch', 'light', 'thermostat'].includes(kind) || !!findKind(own, kind)?.electric;
}

/** What a door's leaf cannot pass; sockets and switches lie flush. */
export function standsOut(kind: string, own: readonly OwnKind[]): boolean {
  const usual = ['light', 'thermostat', 'radiator', 'pipe', 'beam-end'].includes(kind);
  return usual || (findKind(own, kind)?.depth ?? 0) > 0;
}

/** Every fitting of a kind, wall by wall. */
export function fittingsOfKind(job: Job, name: string): FittingPlace[] {
  return job.walls.flatMap((wall) =>
    wall.fittings.filter((fitting) => isSameName(fitting.kind, name)).map((fitting) => ({ wall, fitting })),
  );
}

/** Those that the job has not, after its own; one that it has by that name stays as it is. */
export function bringKinds(job: Job, kinds: readonly OwnKind[]): Job {
  const own = ownKindsOf(job);
  const brought = withMissing(own, kinds, mostFittingKinds);
  return brought === own ? job : { ...job, fittingKinds: [...brought] };
}

/** Fields of a kind replaced (undefined takes one out); under another name its fittings follow. What is on the wall keeps its size. */
export function changeKind(job: Job, name: string, patch: Partial<OwnKind>): Job {
  const kind = findKind(ownKindsOf(job), name);
  if (!kind) return job;
  const changed = withoutUndefined({ ...kind, ...patch });
  const kinds = ownKindsOf(job).map((one) => (one === kind ? changed : one));
  return renameFittings({ ...job, fittingKinds: kinds }, kind.name, changed.name);
}

/** Fittings of the kind must have been given another before. */
export function removeKind(job: Job, name: string): Job {
  const { fittingKinds: kinds = [], ...rest } = job;
  const left = kinds.filter((kind) => !isSameName(kind.name, name));
  if (left.length === kinds.length) return job;
  return left.length > 0 ? { ...job, fittingKinds: left } : rest;
}

function renameFittings(job: Job, from: string, to: string): Job {
  if (from === to) return job;
  const walls = job.walls.map((wall) =>
    wall.fittings.some(({ kind }) => isSameName(kind, from))
      ? {
          ...wall,
          fittings: wall.fittings.map((fitting) =>
            isSameName(fitting.kind, from) ? { ...fitting, kind: to } : fitting,
          ),
        }
      : wall,
  );
  return { ...job, walls };
}
