import type { PeopleBelow } from '../../core/job/hung-schema';
import type { OpenJob } from './open-job.svelte';

/** The stretch with people below that is chosen; it counts only at Hanging, while nothing else is chosen. */
export function chosenPeople({ wall, station, selection, people }: OpenJob): PeopleBelow | undefined {
  if (!people || selection || station !== 'hanging' || wall?.id !== people.wall) return undefined;
  return wall.peopleBelow?.find(({ id }) => id === people.id);
}
