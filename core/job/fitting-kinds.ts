import { withoutUndefined } from './changes';
import { longestKindName, mostFittingKinds } from './limits';
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

/** By its name, capitals and spaces apart. */
export function findKind(kinds: readonly OwnKind[], name: string): OwnKind | undefined {
  return kinds.find((kind) => kind.name === name) ?? kinds.find((kind) => isSameName(kind.name, name));
}

export function isSameName(a: string, b: string): boolean {
  return plain(a) === plain(b);
}

/**
 * Why a kind cannot be called so, in a sentence, or null.
 *
 * @param others the kinds it has to differ from
 */
export function faultOfKindName(name: string, others: readonly OwnKind[]): string | null {
  if (name.trim() === '') return 'Give the kind a name.';
  if (name.length > longestKindName)
    return `The name has ${name.length} characters; ${longestKindName} is the most.`;
  if (name !== name.trim() || !/^\p{L}[\p{L}\p{M}\p{N} ./()+&'’×°-]*$/u.test(name))
    return 'Begin the name with a letter; letters, figures, spaces and . / ( ) + & - may follow.';
  const usual = usualNames.find((word) => isSameName(word, name) || isSameName(`${word}s`, name));
  if (usual) return `“${usual}” is a usual word here already; give the kind another name.`;
  const other = findKind(others, name);
  return other ? `There is a kind “${other.name}” already; give this one another name.` : null;
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
  const missing = kinds.filter(({ name }, i) => !findKind(own, name) && !findKind(kinds.slice(0, i), name));
  const brought = [...own, ...missing].slice(0, Math.max(own.length, mostFittingKinds));
  return brought.length > own.length ? { ...job, fittingKinds: brought } : job;
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

function plain(name: string): string {
  return name
    .normalize('NFC')
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, ' ');
}
