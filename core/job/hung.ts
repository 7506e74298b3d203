import { changeObject, changeWall } from './changes';
import type { HungItem, PeopleBelow } from './hung-schema';
import type { MagnetRecord, PullTestRecord } from './magnet-schema';
import type { Job, Wall, Zone } from './schema';

/*
 * What hangs on walls, and what it is judged by: pure changes of a job. Moving, resizing, copying and removing an item are
 * those of every object (`changes.ts`, with a reference of kind `hung`).
 */

export function addHung(job: Job, wallId: string, item: HungItem): Job {
  return changeWall(job, wallId, (wall) => ({ ...wall, hung: [...(wall.hung ?? []), item] }));
}

/** Fields of an item replaced; a field set to undefined is taken out. */
export function changeHung(job: Job, wallId: string, id: string, patch: Partial<HungItem>): Job {
  return changeObject<HungItem>(job, wallId, { kind: 'hung', id }, patch);
}

/** @param below [] says that nobody is under the wall; undefined that nobody has said */
export function setPeopleBelow(job: Job, wallId: string, below: readonly PeopleBelow[] | undefined): Job {
  return changeWall(job, wallId, ({ peopleBelow: _, ...wall }) =>
    below === undefined ? (wall as Wall) : { ...wall, peopleBelow: [...below] },
  );
}

export function setPullTests(
  job: Job,
  wallId: string,
  zoneId: string,
  tests: readonly PullTestRecord[],
): Job {
  const pullTests = tests.length > 0 ? [...tests] : undefined;
  return changeObject<Zone>(job, wallId, { kind: 'zone', id: zoneId }, { pullTests } as Partial<Zone>);
}

/** A magnet put in place of the job's own of the same id, or listed after the others. */
export function putMagnet(job: Job, magnet: MagnetRecord): Job {
  const own = job.magnets ?? [];
  const isListed = own.some(({ id }) => id === magnet.id);
  const magnets = isListed ? own.map((one) => (one.id === magnet.id ? magnet : one)) : [...own, magnet];
  return { ...job, magnets };
}

/** A ready magnet of the same id is then the ready one again; items and tests that name another are left without one. */
export function removeMagnet(job: Job, id: string): Job {
  const { magnets: own = [], ...rest } = job;
  const left = own.filter((one) => one.id !== id);
  if (left.length === own.length) return job;
  return left.length > 0 ? { ...job, magnets: left } : (rest as Job);
}
