import { withUsual } from '../job/holding-map';
import { usualMagnet } from '../job/hung-kinds';
import type { Job } from '../job/schema';
import type { MapQuestion } from './holding-map';
import { magnetsOf } from './ready-magnets';

/** What the job's holding maps are drawn for; a magnet that the job has no more gives way to the usual one. */
export function mapQuestionOf(job: Job): MapQuestion {
  const { magnet: id, reach, use } = withUsual(job.holdingMap);
  const magnets = magnetsOf(job);
  return { magnet: magnets.get(id) ?? magnets.get(usualMagnet)!, reach, use };
}
