import {
  addEmptyAlternative,
  alternativesOf,
  chooseAlternative,
  copyAlternative,
  freshAlternativeId,
  hasAlternatives,
  removeAlternative,
  renameAlternative,
  reorderAlternative,
} from '../../../core/job/alternatives';
import type { Job } from '../../../core/job/schema';
import { findObject } from '../../../core/job/shape';
import type { OpenJob } from '../open-job.svelte';
import { make, type NamedChange } from './named-change';

/** Brings another alternative onto the walls; what is selected stays selected where it is in that one too. */
export function choose(open: OpenJob, id: string): string | null {
  return settle(open, {
    name: `Choose ${nameOf(open.job, id)}`,
    change: (job) => chooseAlternative(job, id),
  });
}

/** A copy of an alternative comes onto the walls, so that work goes on in it. */
export function goOnInCopy(open: OpenJob, id: string): string | null {
  return settle(open, {
    name: `Copy ${nameOf(open.job, id)}`,
    change: (job) => {
      const named = nameFirst(job);
      const copied = copyAlternative(named, id, freshTitle(named));
      return chooseAlternative(copied, freshAlternativeId(named));
    },
  });
}

/** Bare walls come onto the screen, so that work begins on them. */
export function beginEmpty(open: OpenJob): string | null {
  return settle(open, {
    name: 'Add an empty alternative',
    change: (job) => {
      const named = nameFirst(job);
      return chooseAlternative(addEmptyAlternative(named, freshTitle(named)), freshAlternativeId(named));
    },
  });
}

export function rename(job: Job, id: string, name: string): NamedChange {
  return { name: `Rename ${nameOf(job, id)}`, change: (start) => renameAlternative(start, id, name) };
}

export function takeOutAlternative(job: Job, id: string): NamedChange {
  return { name: `Delete ${nameOf(job, id)}`, change: (start) => removeAlternative(start, id) };
}

export function reorder(job: Job, id: string, by: -1 | 1): NamedChange {
  return {
    name: `Move ${nameOf(job, id)} in the list`,
    change: (start) => reorderAlternative(start, id, by),
  };
}

/** The first one gets a name of its own before there is a second, which no later place in the list changes. */
function nameFirst(job: Job): Job {
  const [first] = alternativesOf(job);
  return hasAlternatives(job) || !first ? job : renameAlternative(job, first.id, first.title);
}

function freshTitle(job: Job): string {
  const taken = new Set(alternativesOf(job).map(({ title }) => title));
  for (let n = taken.size + 1; ; n++) if (!taken.has(`Alternative ${n}`)) return `Alternative ${n}`;
}

function nameOf(job: Job, id: string): string {
  const title = alternativesOf(job).find((alternative) => alternative.id === id)?.title ?? id;
  return title.startsWith('Alternative ') ? title.toLowerCase() : `alternative “${title}”`;
}

function settle(open: OpenJob, change: NamedChange): string | null {
  const refused = make(open, change);
  const { selection, wall } = open;
  const isThere =
    selection &&
    selection.kind !== 'panel' &&
    (selection.kind === 'vertex' || (wall && findObject(wall, selection)));
  if (!refused && !isThere) open.selection = null;
  return refused;
}
