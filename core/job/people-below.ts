import { tidy, withoutUndefined } from './changes';
import type { PeopleBelow } from './hung-schema';
import type { Wall } from './schema';

/** Within a sentence. */
export const kindWordsOfPeople: Readonly<Record<PeopleBelow['kind'], string>> = {
  bed: 'bed',
  seat: 'seat',
  'play-area': 'play area',
  walkway: 'walkway',
  'way-out': 'way out',
};

/** Along the wall, mm, until somebody measures it. Common practice, no source. */
export const usualWidthOfPeople: Readonly<Record<PeopleBelow['kind'], number>> = {
  bed: 2000,
  seat: 600,
  'play-area': 2000,
  walkway: 1200,
  'way-out': 1000,
};

/** A stretch from the floor up, under an id that the wall's others have not. */
export function newPeople(
  { peopleBelow = [] }: Wall,
  kind: PeopleBelow['kind'],
  { x, width }: Pick<PeopleBelow, 'x' | 'width'>,
): PeopleBelow {
  const taken = new Set(peopleBelow.map(({ id }) => id));
  let number = 1;
  while (taken.has(`B${number}`)) number++;
  return { id: `B${number}`, kind, x: tidy(x), width: tidy(width) };
}

/** Fields of a stretch replaced; at height 0 it is said to be from the floor. */
export function changedPeople(one: PeopleBelow, patch: Partial<PeopleBelow>): PeopleBelow {
  const next = { ...one, ...patch };
  return withoutUndefined({
    ...next,
    x: tidy(next.x),
    width: tidy(next.width),
    y: next.y === undefined ? undefined : tidy(next.y) || undefined,
  });
}
