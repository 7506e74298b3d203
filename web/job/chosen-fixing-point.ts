import type { FixingPoint } from '../../core/job/ground-schema';
import type { OpenJob } from './open-job.svelte';

/** The fixing point of the wall on the screen that is chosen; it counts only at Survey, while nothing else is chosen. */
export function chosenFixingPoint({
  wall,
  station,
  selection,
  fixingPoint,
}: OpenJob): FixingPoint | undefined {
  if (!fixingPoint || selection || station !== 'survey' || wall?.id !== fixingPoint.wall) return undefined;
  return wall.fixingPoints?.find(({ id }) => id === fixingPoint.id);
}
