import { changeObject } from '../../../core/job/changes';
import { defaultFitting } from '../../../core/job/defaults';
import {
  bringKinds,
  changeKind,
  faultOfKindName,
  fittingsOfKind,
  ownKindsOf,
  removeKind,
} from '../../../core/job/fitting-kinds';
import { findKind } from '../../../core/job/kind-names';
import { giveFigures, giveKind } from '../../../core/job/give-kind';
import { mostFittingKinds } from '../../../core/job/limits';
import type { Fitting, Job, OwnKind, Wall } from '../../../core/job/schema';
import { findObject, findWall, type ObjectRef } from '../../../core/job/shape';
import type { NamedChange } from './named-change';
import { kindName, nameOfObject } from './names';
import { usedBy } from './used-by';

/** A kind with the figures of a free fitting, to be given its own. */
export function addKind(typed: string): NamedChange {
  const name = typed.trim();
  const { width, height, y: floor, clearance } = defaultFitting('free');
  return {
    name: `Make the kind “${name}”`,
    change: (job) => bringKinds(job, [{ name, width, height, floor, clearance }]),
  };
}

/** Why a kind cannot be called so in this job, in a sentence, or null. */
export function faultOfNewKind(job: Job, typed: string): string | null {
  const own = ownKindsOf(job);
  if (own.length >= mostFittingKinds)
    return `A job has at most ${mostFittingKinds} kinds of its own; delete one first.`;
  return faultOfKindName(typed.trim(), own);
}

export function setKindFields(name: string, patch: Partial<OwnKind>): NamedChange {
  return {
    name: patch.name === undefined ? `Change the kind “${name}”` : `Rename the kind “${name}”`,
    change: (job) => changeKind(job, name, patch),
  };
}

/** Refused while something on a wall is of that kind. */
export function takeOutKind(job: Job, name: string): NamedChange | { readonly fault: string } {
  const users = fittingsOfKind(job, name).map(({ wall, fitting }) => `${fitting.id} on wall ${wall.id}`);
  return (
    usedBy(name, users) ?? { name: `Delete the kind “${name}”`, change: (start) => removeKind(start, name) }
  );
}

export function giveFiguresOfKind(name: string): NamedChange {
  return { name: `Give the figures of “${name}”`, change: (job) => giveFigures(job, name) };
}

/** @param offered kinds that the job may not have yet; it gets the one that is chosen */
export function setKind(wall: Wall, ref: ObjectRef, kind: string, offered: readonly OwnKind[]): NamedChange {
  return {
    name: `Change kind of ${nameOfObject(wall, ref)} to ${kindName(kind, 'fitting')}`,
    change: (start) => {
      const job = bringKind(start, kind, offered);
      const found = findWall(job, wall.id);
      const fitting = found && (findObject(found, ref) as Fitting | undefined);
      if (!fitting) return start;
      const { x, y, width, height, circle, ...rest } = giveKind(fitting, kind, ownKindsOf(job));
      return changeObject<Fitting>(job, wall.id, ref, { ...rest, x, y, width, height, circle });
    },
  };
}

/** The kind among the job's own if it is one of those offered. */
export function bringKind(job: Job, name: string, offered: readonly OwnKind[]): Job {
  const kind = findKind(offered, name);
  return kind ? bringKinds(job, [kind]) : job;
}
