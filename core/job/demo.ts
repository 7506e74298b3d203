import demoFile from './demo-job.json';
import { readJobObject } from './read';
import type { Job } from './schema';

/** The job that opens at the first start: a letterpress print studio. Its people and figures are invented. */
export function demoJob(): Job {
  const { job, findings } = readJobObject(demoFile);
  if (!job) throw new Error(`The demo job is broken: ${findings.map(({ text }) => text).join(' ')}`);
  return job;
}

export { emptyJob } from './defaults';
