import type { HungKind } from '../../../core/job/hung-schema';
import { findKind } from '../../../core/job/kind-names';
import { mostHungKinds } from '../../../core/job/limits';
import {
  bringHungKinds,
  changeHungKind,
  faultOfHungKindName,
  giveHungFigures,
  hungOfKind,
  ownHungKindsOf,
  removeHungKind,
} from '../../../core/job/own-hung-kinds';
import type { Job } from '../../../core/job/schema';
import type { NamedChange } from './named-change';
import { usedBy } from './used-by';

/** @param like what it takes its figures from; without it those of an unknown thing, to be given its own */
export function addHungKind(typed: string, like: HungKind | undefined): NamedChange {
  const name = typed.trim();
  const plain = { width: 200, height: 200, depth: 0 } satisfies HungKind['item'];
  return {
    name: `Make the kind “${name}”`,
    change: (job) => bringHungKinds(job, [{ ...(like ?? { item: plain }), name }]),
  };
}

/** Why a kind cannot be called so in this job, in a sentence, or null. */
export function faultOfNewHungKind(job: Job, typed: string): string | null {
  const own = ownHungKindsOf(job);
  if (own.length >= mostHungKinds)
    return `A job has at most ${mostHungKinds} kinds of its own; delete one first.`;
  return faultOfHungKindName(typed.trim(), own);
}

export function setHungKindFields(name: string, patch: Partial<HungKind>): NamedChange {
  return {
    name: patch.name === undefined ? `Change the kind “${name}”` : `Rename the kind “${name}”`,
    change: (job) => changeHungKind(job, name, patch),
  };
}

/** Refused while something that hangs is of that kind, in other alternatives, too. */
export function takeOutHungKind(job: Job, name: string): NamedChange | { readonly fault: string } {
  const users = hungOfKind(job, name).map(
    ({ wallId, item, isElsewhere }) =>
      `${item.id} on wall ${wallId}${isElsewhere ? ' in another alternative' : ''}`,
  );
  return (
    usedBy(name, users) ?? {
      name: `Delete the kind “${name}”`,
      change: (start) => removeHungKind(start, name),
    }
  );
}

export function giveFiguresOfHungKind(name: string): NamedChange {
  return { name: `Give the figures of “${name}”`, change: (job) => giveHungFigures(job, name) };
}

/** The kind among the job's own if it is one of those offered. */
export function bringHungKind(job: Job, name: string, offered: readonly HungKind[]): Job {
  const kind = findKind(offered, name);
  return kind ? bringHungKinds(job, [kind]) : job;
}
