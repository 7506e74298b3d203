import type { PeopleBelow } from './hung-schema';

/** Within a sentence. */
export const kindWordsOfPeople: Readonly<Record<PeopleBelow['kind'], string>> = {
  bed: 'bed',
  seat: 'seat',
  'play-area': 'play area',
  walkway: 'walkway',
  'way-out': 'way out',
};
