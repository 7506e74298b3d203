import { demoJob } from '../../core/job/demo';
import { readJobObject } from '../../core/job/read';
import type { Job } from '../../core/job/schema';
import type { Keeping, Opened } from '../keeping/keeping.svelte';
import { sentence } from '../look/figures';
import { faultInWords } from './fault-in-words';
import { OpenJob, type StationName } from '../job/open-job.svelte';
import { stations } from '../stations/stations';

/** The job that was open last, at the same wall and station; on the very first start the demo job. */
export async function startJob(keeping: Keeping): Promise<OpenJob> {
  const last = await keeping.lastOpen().catch(() => null);
  const open = new OpenJob(last?.job ?? demoJob(), faultOf);
  if (last) {
    recall(open, last);
    goTo(open, last.place.wallId, last.place.station);
  } else open.station = 'panels';
  return open;
}

/** Undo goes on where it was left. A job of that time is read as a file would be: this version may ask for more. */
export function recall(open: OpenJob, { job, history }: Pick<Opened, 'job' | 'history'>): void {
  const sound = new Set(job.walls);
  open.recall(history, (earlier) => {
    const read = readJobObject(earlier).job;
    const walls = read?.walls.map((wall, i) => (sound.has(earlier.walls[i]!) ? earlier.walls[i]! : wall));
    return read && { ...read, walls: walls! };
  });
}

export function goTo(open: OpenJob, wallId: string, station: string): void {
  if (open.job.walls.some((wall) => wall.id === wallId)) open.showWall(wallId);
  if (stations.some((entry) => entry.name === station)) open.station = station as StationName;
}

/** The first reason why a job could not be opened again once it is saved. */
function faultOf(job: Job): string | null {
  const text = readJobObject(job).findings[0]?.text;
  return text === undefined ? null : sentence(faultInWords(text));
}
