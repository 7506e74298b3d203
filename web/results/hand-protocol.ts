import type { HandChoice, Job } from '../../core/job/schema';
import type { HandFigures } from '../../core/run/hand-figures';

/** To the worker that weighs a choice by hand: first which one, then the choice as often as the hand moves it. */
export type HandRequest =
  | { readonly job: Job; readonly wallId: string; readonly zoneId: string; readonly id: string }
  | { readonly choice: HandChoice };

/** From it: what the zone comes to without the choice, and with it as it was asked for last. */
export type HandReply =
  | { readonly without: HandFigures | null }
  | { readonly figures: HandFigures | null }
  | { readonly fault: string };
