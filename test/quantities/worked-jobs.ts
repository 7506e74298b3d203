import * as v from 'valibot';
import { jobSchema, type Job } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import { settingsOf } from '../../core/quantities/settings';
import { takeOff, type TakeOff } from '../../core/quantities/take-off';
import { needsOfWalls, type WallNeeds } from '../../core/quantities/wall-needs';
import type { WorkedOut } from '../../core/worked-out';

/** Jobs for the tests of quantities, put down in few words and worked out by the stages before. */
export function jobOf(fields: object): Job {
  return v.parse(jobSchema, { format: 'lodeplan-job', version: 1, name: 'Test', ...fields });
}

export function box(x: number, y: number, width: number, height: number): [number, number][] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

/** A wall of 6 × 3 m. */
export function wallOf(fields: object): object {
  return { id: 'A', outline: box(0, 0, 6000, 3000), ...fields };
}

export function workedTakeOff(job: Job): { worked: WorkedOut; off: TakeOff } {
  const worked = workOutFully(job, { steps: 1 });
  return { worked, off: takeOff(job, worked.walls, worked.cutting) };
}

/** The needs of each wall as the take-off keeps them. */
export function wallsOf(job: Job, { walls }: WorkedOut): WallNeeds[] {
  const work = needsOfWalls(job, walls, settingsOf(job));
  for (;;) {
    const { value, done } = work.next();
    if (done) return value;
  }
}

/** What a job takes of each item, as it lies on the wall. */
export function netByItem({ needs }: TakeOff): Record<string, number> {
  const sums: Record<string, number> = {};
  for (const { item, net } of needs) sums[item] = (sums[item] ?? 0) + net;
  return sums;
}
