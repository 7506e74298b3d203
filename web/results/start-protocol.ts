import type { Point } from '../../core/geometry/polygon';
import type { Job } from '../../core/job/schema';
import type { StartFigures, StartScale } from '../../core/run/start-scale';

/** To the worker that weighs starts: first which zone, then starts as often as the hand moves. */
export type StartRequest =
  { readonly job: Job; readonly wallId: string; readonly zoneId: string } | { readonly start: Point };

/** What a hand that looks for a start can be drawn to. */
export type StartPlaces = Pick<StartScale, 'events' | 'pattern' | 'bottom'>;

/** From it: where starts change something, figures of the start asked for last, and the best starts once found. */
export type StartReply =
  | { readonly places: StartPlaces | null }
  | { readonly figures: StartFigures }
  | { readonly best: readonly StartFigures[] }
  | { readonly fault: string };
