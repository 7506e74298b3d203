import { changeWall } from '../../../core/job/changes';
import { setPeopleBelow } from '../../../core/job/hung';
import type { PeopleBelow } from '../../../core/job/hung-schema';
import { changedPeople, kindWordsOfPeople } from '../../../core/job/people-below';
import type { Wall } from '../../../core/job/schema';
import type { NamedChange } from './named-change';

/** `bed B1` */
export function nameOfPeople({ kind, id }: PeopleBelow): string {
  return `${kindWordsOfPeople[kind]} ${id}`;
}

export function putInPeople(wall: Wall, one: PeopleBelow): NamedChange {
  return {
    name: `Put ${nameOfPeople(one)} below wall ${wall.id}`,
    change: (job) =>
      changeWall(job, wall.id, (found) => ({ ...found, peopleBelow: [...(found.peopleBelow ?? []), one] })),
  };
}

/** @param does the first word of the change's name */
export function setPeople(
  wall: Wall,
  one: PeopleBelow,
  patch: Partial<PeopleBelow>,
  does: 'Change' | 'Move' = 'Change',
): NamedChange {
  return {
    name: `${does} ${nameOfPeople(one)} below wall ${wall.id}`,
    change: (job) =>
      changeWall(job, wall.id, (found) => ({
        ...found,
        peopleBelow: found.peopleBelow?.map((other) =>
          other.id === one.id ? changedPeople(other, patch) : other,
        ),
      })),
  };
}

/** Without the last of them nobody has said who is there: that nobody is, is said by itself. */
export function takeOutPeople(wall: Wall, one: PeopleBelow): NamedChange {
  const left = (wall.peopleBelow ?? []).filter(({ id }) => id !== one.id);
  return {
    name: `Take ${nameOfPeople(one)} out below wall ${wall.id}`,
    change: (job) => setPeopleBelow(job, wall.id, left.length > 0 ? left : undefined),
  };
}

export function sayNobodyBelow(wall: Wall): NamedChange {
  return {
    name: `Say that nobody is below wall ${wall.id}`,
    change: (job) => setPeopleBelow(job, wall.id, []),
  };
}
