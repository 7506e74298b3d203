import { pictureOf } from '../../core/job/picture';
import type { Job } from '../../core/job/schema';
import { writeJob } from '../../core/job/write';
import type { JobToKeep, Place } from './kept';

/** A job as it is kept, with what the list of jobs shows of it. */
export function entryOf(job: Job, { wallId, station }: Place): Omit<JobToKeep, 'id' | 'stamp' | 'keptAt'> {
  const holds = job.rack.flatMap(({ firm }) => (firm === undefined ? [] : [firm]));
  const picture = pictureOf(job);
  return { name: job.name, walls: job.walls.length, holds, picture, text: writeJob(job), wallId, station };
}

/** Why nothing is kept, and what to do, in a sentence. */
export function whyNotKept(reason: unknown): string {
  if (reason instanceof Error && reason.name === 'QuotaExceededError') {
    return 'There is no room left on this device, so the last changes are not kept. Use “Save file” now; keeping is tried again at every change.';
  }
  const why = reason instanceof Error && reason.message ? ` (${reason.message.replace(/\.$/, '')})` : '';
  return `This browser keeps nothing here${why}. Use “Save file” before you leave the page; keeping is tried again at every change.`;
}
