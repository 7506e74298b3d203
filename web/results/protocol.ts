import type { Job } from '../../core/job/schema';
import type { WorkedOut } from '../../core/worked-out';
import type { SentWall } from './changed-walls';

/** To the worker. A newer request supersedes the older at once. */
export interface WorkRequest {
  readonly request: number;
  readonly job: Job;
  /** Cutting steps to take before the plan is called final. */
  readonly steps: number;
}

/** From the worker: the first result as soon as it stands, better ones later, the last with `final`. */
export type WorkReply =
  | {
      readonly request: number;
      readonly walls: readonly SentWall[];
      /** All of the result but its walls, and the job, which the other side has. */
      readonly rest: Omit<WorkedOut, 'walls' | 'job'>;
      readonly final: boolean;
    }
  | { readonly request: number; readonly fault: string };
