import { demoJob } from '../../core/job/demo';
import { workOutFully } from '../../core/run/pipeline';
import type { WorkedOut } from '../../core/worked-out';
import { smallWorkedOut } from './small-job';

/** A job worked out by hand and one by the stages: what holds for a document holds for both. */
export const workedJobs: readonly (readonly [name: string, worked: WorkedOut])[] = [
  ['by hand', smallWorkedOut()],
  ['demo', workOutFully(demoJob(), { steps: 2 })],
];
